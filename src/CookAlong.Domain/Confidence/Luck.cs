namespace CookAlong.Domain.Confidence;

/// <summary>
/// The luck of many days. A number belongs to its day and its step and to nothing else: it is the same for the same seed on every
/// machine, however many cooks share the days between them, and two plans of one meal are tried on the same days.
/// Source: SplitMix64, in Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014; asked for any
/// position of its sequence, instead of for one after the other.
/// </summary>
readonly struct Luck(int seed)
{
    const ulong Golden = 0x9E3779B97F4A7C15;

    /// <summary>Steps a day has room for; more than any meal file may hold.</summary>
    const int StepsADay = 1 << 20;

    readonly ulong first = Mix(unchecked((ulong)seed * Golden));

    /// <summary>From 0 up to, not including, 1.</summary>
    /// <param name="step">Its place among the meal's steps.</param>
    public double Fraction(int day, int step) => (Mix(first + ((((ulong)day * StepsADay) + (ulong)step) * Golden)) >> 11) * (1.0 / (1UL << 53));

    static ulong Mix(ulong mixed)
    {
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return mixed ^ (mixed >> 31);
    }
}
