using CookAlong.Domain.FoodSafety;

namespace CookAlong.Domain.Doneness.Rules;

/// <summary>A published roasting time: a table's row, or so many minutes and so many a kilogram.</summary>
/// <param name="Stuffed">Null = the rule does not ask.</param>
/// <param name="LeastKilograms">The weights it is printed for, both ends included.</param>
/// <param name="OvenCelsius">Conventional scale.</param>
/// <param name="CoreCelsius">Where its time ends; null where it is not printed.</param>
/// <param name="Least">Minutes.</param>
/// <param name="Most">Minutes; the same as <paramref name="Least"/> where one time is printed.</param>
public sealed record RoastingRule(
    string Id,
    Cut Cut,
    bool? Stuffed,
    double LeastKilograms,
    double MostKilograms,
    double OvenCelsius,
    double? CoreCelsius,
    Minutes Least,
    Minutes Most,
    Source Source)
{
    public bool Covers(Joint joint) =>
        joint.Cut == Cut && (Stuffed ?? joint.Stuffed) == joint.Stuffed && LeastKilograms <= joint.Kilograms && joint.Kilograms <= MostKilograms;

    public (TimeSpan Least, TimeSpan Most) For(double kilograms) => (Least.For(kilograms), Most.For(kilograms));
}

/// <param name="Fixed">Minutes whatever it weighs.</param>
/// <param name="EachKilogram">Minutes more a kilogram.</param>
public readonly record struct Minutes(double Fixed, double EachKilogram)
{
    public TimeSpan For(double kilograms) => TimeSpan.FromMinutes(Fixed + (EachKilogram * kilograms));
}
