using System.Collections.Immutable;

namespace CookAlong.Domain.Doneness.Rules;

/// <summary>One published rule's time for a joint.</summary>
public sealed record RuleTime(RoastingRule Rule, TimeSpan Least, TimeSpan Most);

/// <summary>Every published time for a joint beside the model's own; none is averaged with another.</summary>
/// <param name="Published">Empty = no rule is printed for such a cut and weight; then the model's own is a guess from other weights.</param>
/// <param name="Model">By the oven and the core temperature asked for, which a rule may not have: a range, no time, or a refusal.</param>
public sealed record SideBySide(ImmutableArray<RuleTime> Published, CoreForecast Model)
{
    /// <param name="coreCelsius">Wanted in the middle.</param>
    public static SideBySide Of(Roasting roasting, double coreCelsius) => new(
        [.. RoastingRules.Covering(roasting.Joint).Select(rule =>
        {
            var (least, most) = rule.For(roasting.Joint.Kilograms);
            return new RuleTime(rule, least, most);
        })],
        Thermometer.Forecast(roasting, [], coreCelsius));
}
