namespace CookAlong.Domain.Confidence;

/// <summary>
/// Random numbers that are the same for the same seed on every machine and in every version of the runtime.
/// Source: SplitMix64, in Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
/// </summary>
struct Dice(ulong seed)
{
    ulong state = seed;

    public ulong Next()
    {
        var mixed = state += 0x9E3779B97F4A7C15;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return mixed ^ (mixed >> 31);
    }

    /// <summary>From 0 up to, not including, 1.</summary>
    public double Fraction() => (Next() >> 11) * (1.0 / (1UL << 53));
}
