using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <summary>What a household plans an oven with in place of what its meals say; null = as they say.</summary>
/// <param name="Name">As meals call it, small letters.</param>
public sealed record AcceptedOven(string Name, decimal? HeatUpPerMinute, decimal? CoolDownPerMinute, int? ReadsHighBy)
{
    public static string KeyOf(string name) => name.Trim().ToLowerInvariant();

    /// <summary>Rates as a cook would note them: half degrees a minute heating, tenths cooling; the dial in fives, which no one can set finer.</summary>
    public static AcceptedOven Of(string name, OvenLearned learned) => new(
        KeyOf(name),
        learned.HeatUpPerMinute is { } heat ? Math.Round((decimal)heat.Value * 2, MidpointRounding.AwayFromZero) / 2 : null,
        learned.CoolDownPerMinute is { } cool ? Math.Round((decimal)cool.Value, 1, MidpointRounding.AwayFromZero) : null,
        learned.ReadsHighBy is { } high ? (int)Math.Round(high.Value / 5, MidpointRounding.AwayFromZero) * 5 : null);

    public Oven Of(Oven oven) => oven with
    {
        HeatUpPerMinute = HeatUpPerMinute ?? oven.HeatUpPerMinute,
        CoolDownPerMinute = CoolDownPerMinute ?? oven.CoolDownPerMinute,
        ReadsHighBy = ReadsHighBy ?? oven.ReadsHighBy,
    };

    /// <summary>The meal with its ovens as they are.</summary>
    public static Meal Apply(Meal meal, IReadOnlyDictionary<string, AcceptedOven> accepted)
    {
        Oven Known(Oven oven) => accepted.GetValueOrDefault(KeyOf(oven.Name)) is { } one ? one.Of(oven) : oven;
        return meal.Kitchen.Ovens.Any(oven => Known(oven) != oven)
            ? meal with { Kitchen = meal.Kitchen with { Ovens = [.. meal.Kitchen.Ovens.Select(Known)] } }
            : meal;
    }
}
