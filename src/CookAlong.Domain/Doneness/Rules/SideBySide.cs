using System.Collections.Immutable;

namespace CookAlong.Domain.Doneness.Rules;

/// <summary>One published rule's time for a joint: always a range.</summary>
/// <param name="Printed">Where the rule has one time and no range; then the range is that of all rules printed for such a joint, none averaged.</param>
public sealed record RuleTime(RoastingRule Rule, TimeSpan Least, TimeSpan Most, TimeSpan? Printed)
{
    /// <summary>Of a time that stands alone: rules for one joint lie as far apart; own estimate, no source.</summary>
    const double EitherSide = .1;

    /// <summary>Of every rule printed for such a joint.</summary>
    public static IEnumerable<RuleTime> Of(Joint joint)
    {
        List<(RoastingRule Rule, TimeSpan Least, TimeSpan Most)> all = [.. from rule in RoastingRules.Covering(joint) let time = rule.For(joint.Kilograms) select (rule, time.Least, time.Most)];
        foreach (var (rule, least, most) in all)
        {
            var (shortest, longest) = (all.Min(one => one.Least), all.Max(one => one.Most));
            yield return least < most ? new(rule, least, most, null)
                : shortest < longest ? new(rule, shortest, longest, least)
                : new(rule, least * (1 - EitherSide), least * (1 + EitherSide), least);
        }
    }
}

/// <summary>Every published time for a joint beside the model's own; none is averaged with another.</summary>
/// <param name="Published">Empty = no rule is printed for such a cut and weight; then the model's own is a guess from other weights.</param>
/// <param name="Model">By the oven and the core temperature asked for, which a rule may not have: a range, no time, or a refusal.</param>
public sealed record SideBySide(ImmutableArray<RuleTime> Published, CoreForecast Model)
{
    /// <param name="coreCelsius">Wanted in the middle.</param>
    public static SideBySide Of(Roasting roasting, double coreCelsius) => new(
        [.. RuleTime.Of(roasting.Joint)],
        Thermometer.Forecast(roasting, [], coreCelsius));
}
