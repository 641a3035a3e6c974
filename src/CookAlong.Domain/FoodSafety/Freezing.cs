using System.Collections.Immutable;
using static CookAlong.Domain.FoodSafety.Sources;

namespace CookAlong.Domain.FoodSafety;

/// <summary>
/// How long frozen leftovers are at their best, in months of 30 days. Frozen food stays safe at -18 °C (0 °F); these are limits of
/// quality. A limit of nothing at all = it does not freeze well.
/// </summary>
public static class Freezing
{
    static readonly TimeLimit Uk = Months("uk-freeze", 0, 3, new("UK Food Standards Agency", "Food Safety Week: making food go further", 2012, "freezing leftovers, as reported by a trainer"));

    public static ImmutableArray<TimeLimit> All => [Uk, .. Enum.GetValues<LeftoverKind>().Select(Us)];

    public static Published<TimeLimit> Keep(Region region, LeftoverKind kind) => region switch
    {
        Region.UnitedKingdom or Region.Scotland => new Published<TimeLimit>.Is(Uk),
        Region.UnitedStates => new Published<TimeLimit>.Is(Us(kind)),
        Region.Canada => new Published<TimeLimit>.None(region),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    static TimeLimit Us(LeftoverKind kind) => kind switch
    {
        LeftoverKind.MeatPoultryOrFish => Months("us-freeze-meat", 2, 3, FoodKeeper),
        LeftoverKind.Rice => Months("us-freeze-rice", 6, 6, FoodKeeper),
        LeftoverKind.Pasta => Months("us-freeze-pasta", 1, 2, FoodKeeper),
        LeftoverKind.SoupOrStew => Months("us-freeze-soup", 2, 3, ColdChart),
        LeftoverKind.Stuffing => Months("us-freeze-stuffing", 1, 1, Holidays),
        LeftoverKind.Gravy => Months("us-freeze-gravy", 1, 1, Holidays),
        LeftoverKind.Ham => Months("us-freeze-ham", 3, 4, ColdChart),
        LeftoverKind.EggDish => Months("us-freeze-egg", 2, 3, FoodKeeper),
        LeftoverKind.Salad => Months("us-freeze-salad", 0, 0, ColdChart),
        LeftoverKind.Vegetables => Months("us-freeze-vegetables", 1, 2, FoodKeeper),
        _ => throw new System.Diagnostics.UnreachableException(kind.ToString()),
    };

    static Source Holidays => new("USDA FSIS", "foodsafety.gov, Recommended Storage Times", null, "stuffing and gravy, as reprinted by a grocer");

    static TimeLimit Months(string id, int least, int most, Source source) => new(id, TimeSpan.FromDays(30 * least), TimeSpan.FromDays(30 * most), source);
}
