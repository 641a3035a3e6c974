namespace CookAlong.Domain.FoodSafety;

/// <summary>
/// When a dish's leftovers have to be where, by the strictest limit of all that the dish holds: rice with chicken keeps no longer
/// than either. Each is null where the region has no limit.
/// </summary>
/// <param name="InFridge">The latest it is in the fridge.</param>
/// <param name="Eat">The latest it is eaten, or frozen.</param>
/// <param name="Freeze">Until when it is at its best, frozen; null also where it does not freeze well.</param>
public sealed record LeftoverTimes(LeftoverTime? InFridge, LeftoverTime? Eat, LeftoverTime? Freeze)
{
    /// <param name="kinds">One at the least.</param>
    /// <param name="cooked">When it was cooked; a dish made ahead was cooked then, not when it was warmed.</param>
    /// <param name="offTheHeat">When it was hot last.</param>
    public static LeftoverTimes Of(Region region, IReadOnlyCollection<LeftoverKind> kinds, DateTimeOffset cooked, DateTimeOffset offTheHeat)
    {
        if (kinds.Count == 0)
        {
            throw new ArgumentException("a dish is of one kind at the least", nameof(kinds));
        }

        return new(
            Strictest(kinds, kind => Leftovers.CoolWithin(region, kind), limit => offTheHeat + Cautious(limit)),
            Strictest(kinds, kind => Leftovers.Keep(region, kind), limit => cooked + Cautious(limit)),
            Strictest(kinds, kind => Freezing.Keep(region, kind), limit => cooked + Cautious(limit)) is { Limit.Most.Ticks: > 0 } frozen ? frozen : null);
    }

    /// <summary>Where a span is printed, its shorter end.</summary>
    static TimeSpan Cautious(TimeLimit limit) => limit.Least > TimeSpan.Zero ? limit.Least : limit.Most;

    static LeftoverTime? Strictest(IEnumerable<LeftoverKind> kinds, Func<LeftoverKind, Published<TimeLimit>> published, Func<TimeLimit, DateTimeOffset> until) =>
        kinds.Select(published).OfType<Published<TimeLimit>.Is>().Select(one => new LeftoverTime(until(one.Limit), one.Limit)).OrderBy(one => one.By).ThenBy(one => one.Limit.Most).FirstOrDefault();
}

/// <param name="Limit">What decides.</param>
public sealed record LeftoverTime(DateTimeOffset By, TimeLimit Limit);
