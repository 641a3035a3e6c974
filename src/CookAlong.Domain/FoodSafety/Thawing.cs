using System.Collections.Immutable;
using CookAlong.Domain.Quantities;
using static CookAlong.Domain.FoodSafety.Sources;

namespace CookAlong.Domain.FoodSafety;

public enum ThawingPlace
{
    Fridge,

    /// <summary>In a leak-proof bag, the water changed every half hour, cooked at once.</summary>
    ColdWater,

    /// <summary>A room below 17.5 °C.</summary>
    CoolRoom,
}

/// <summary>A published thawing time: so many hours a kilogram, or a table's row.</summary>
/// <param name="MostKilograms">The heaviest it is printed for.</param>
public sealed record ThawingRule(string Id, ThawingPlace Place, double LeastKilograms, double MostKilograms, ThawHours Least, ThawHours Most, Source Source)
{
    public TimeLimit For(double kilograms) => new(Id, Least.For(kilograms), Most.For(kilograms), Source);
}

/// <param name="Fixed">Hours whatever it weighs.</param>
/// <param name="EachKilogram">Hours more a kilogram.</param>
public readonly record struct ThawHours(double Fixed, double EachKilogram)
{
    public TimeSpan For(double kilograms) => TimeSpan.FromHours(Fixed + (EachKilogram * kilograms));
}

/// <summary>How long a whole turkey, or a bird or joint like it, takes to thaw. Printed for turkey; the hours a kilogram are used for other large joints too.</summary>
public static class Thawing
{
    /// <summary>A table's row goes before a rule: it is printed for that weight.</summary>
    static readonly ImmutableArray<ThawingRule> States =
    [
        Row("us-thaw-fridge-4", ThawingPlace.Fridge, 4, 6, 24, 36),
        Row("us-thaw-fridge-6", ThawingPlace.Fridge, 6, 8, 36, 48),
        Row("us-thaw-fridge-8", ThawingPlace.Fridge, 8, 12, 48, 72),
        Row("us-thaw-fridge-12", ThawingPlace.Fridge, 12, 14, 72, 84),
        Row("us-thaw-fridge-14", ThawingPlace.Fridge, 14, 18, 84, 108),
        Row("us-thaw-fridge-18", ThawingPlace.Fridge, 18, 20, 108, 120),
        Row("us-thaw-water-8", ThawingPlace.ColdWater, 8, 12, 4, 6),
        Row("us-thaw-water-20", ThawingPlace.ColdWater, 20, 24, 10, 12),
        new("us-thaw-fridge", ThawingPlace.Fridge, .5, 14, new(0, 24 / (5 * Units.OfAPound)), new(0, 24 / (4 * Units.OfAPound)), UsThaw),
        new("us-thaw-water", ThawingPlace.ColdWater, .5, 14, new(0, .5 / Units.OfAPound), new(0, .5 / Units.OfAPound), UsThaw),
    ];

    static readonly ImmutableArray<ThawingRule> Kingdom =
    [
        new("uk-thaw-fridge", ThawingPlace.Fridge, .5, 14, new(0, 10), new(0, 12), UkThaw),
        new("uk-thaw-cool", ThawingPlace.CoolRoom, .5, 14, new(0, 3), new(0, 4), UkThaw),
    ];

    public static ImmutableArray<ThawingRule> All => [.. States, .. Kingdom];

    /// <summary>Null = the household's authority prints no time for such a weight in such a place, and none is made up.</summary>
    public static TimeLimit? For(Region region, ThawingPlace place, double kilograms) =>
        Of(region).FirstOrDefault(rule => rule.Place == place && rule.LeastKilograms <= kilograms && kilograms <= rule.MostKilograms)?.For(kilograms);

    static ImmutableArray<ThawingRule> Of(Region region) => region switch
    {
        Region.UnitedStates => States,
        Region.UnitedKingdom or Region.Scotland => Kingdom,
        Region.Canada => [],
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    static ThawingRule Row(string id, ThawingPlace place, double from, double to, double least, double most) =>
        new(id, place, from * Units.OfAPound, to * Units.OfAPound, new(least, 0), new(most, 0), UsThaw);
}
