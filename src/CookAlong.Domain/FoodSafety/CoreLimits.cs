using System.Collections.Immutable;
using CookAlong.Domain.Quantities;
using static CookAlong.Domain.FoodSafety.Sources;

namespace CookAlong.Domain.FoodSafety;

/// <summary>The core temperature a food must have had, by the household's own authority.</summary>
public static class CoreLimits
{
    /// <summary>Each with the regions and the foods it is for.</summary>
    public static ImmutableArray<(ImmutableArray<Region> Regions, ImmutableArray<Food> Foods, Limit Limit)> All { get; } =
    [
        (Us, [Food.WholePoultry, Food.PoultryPieces], new("us-poultry", OvenScale.Celsius(fahrenheit: 165), null, UsChart)),
        (Us, [Food.Stuffing], new("us-stuffing", OvenScale.Celsius(fahrenheit: 165), null, UsChart)),
        (Us, [Food.Casserole], new("us-casserole", OvenScale.Celsius(fahrenheit: 165), null, UsChart)),
        (Us, [Food.GroundMeat], new("us-ground", OvenScale.Celsius(fahrenheit: 160), null, UsChart)),
        (Us, [Food.EggDish], new("us-egg-dish", OvenScale.Celsius(fahrenheit: 160), null, UsChart)),
        (Us, [Food.WholeCut, Food.RolledJoint, Food.Pork], new("us-whole-cut", OvenScale.Celsius(fahrenheit: 145), TimeSpan.FromMinutes(3), UsChart) { OffTheHeat = true }),
        (Us, [Food.RawHam], new("us-raw-ham", OvenScale.Celsius(fahrenheit: 145), TimeSpan.FromMinutes(3), UsChart) { OffTheHeat = true }),
        (Us, [Food.Fish], new("us-fish", OvenScale.Celsius(fahrenheit: 145), null, UsChart)),
        // One rule for all: 70 °C for 2 minutes, or what kills as much. Whole beef and lamb may be served pink (PinkInside).
        (Uk, [.. Enum.GetValues<Food>()], new("uk-70-for-2", 70, TimeSpan.FromMinutes(2), UkCooking)),
        (Ca, [Food.WholeCut], new("ca-beef-medium-rare", 63, null, Sources.Canada)),
        (Ca, [Food.Pork], new("ca-pork", 71, null, Sources.Canada)),
        (Ca, [Food.GroundMeat], new("ca-ground", 71, null, Sources.Canada)),
        (Ca, [Food.PoultryPieces], new("ca-poultry-pieces", 74, null, Sources.Canada)),
        // Later pages print 82; the household sees the source and its year.
        (Ca, [Food.WholePoultry], new("ca-whole-poultry", 85, null, Sources.Canada)),
        (Ca, [Food.EggDish], new("ca-egg-dish", 74, null, Sources.Canada)),
        (Ca, [Food.Fish], new("ca-fish", 70, null, Sources.Canada)),
    ];

    static ImmutableArray<Region> Us => [Region.UnitedStates];

    static ImmutableArray<Region> Uk => [Region.UnitedKingdom, Region.Scotland];

    static ImmutableArray<Region> Ca => [Region.Canada];

    public static Published<Limit> Of(Region region, Food food) =>
        All.FirstOrDefault(one => one.Regions.Contains(region) && one.Foods.Contains(food)) is { Limit: { } limit }
            ? new Published<Limit>.Is(limit)
            : new Published<Limit>.None(region);

    /// <summary>
    /// Whole joints and steaks of beef and lamb, sealed outside, may be served pink; never poultry, pork, rolled joints, mince.
    /// Source: UK Food Standards Agency, advice to caterers as given by nibusinessinfo.co.uk.
    /// </summary>
    public static bool PinkInside(Region region, Food food) => region is Region.UnitedKingdom or Region.Scotland && food == Food.WholeCut;
}
