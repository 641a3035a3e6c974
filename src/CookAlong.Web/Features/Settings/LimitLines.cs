using CookAlong.Domain.FoodSafety;
using Keeping = CookAlong.Domain.FoodSafety.Leftovers;

namespace CookAlong.Web.Features.Settings;

/// <summary>One published limit as a line of the page.</summary>
/// <param name="Source">Null where the region has no limit here.</param>
public sealed record LimitLine(string For, string Says, Source? Source);

/// <summary>Every limit that a region brings with it.</summary>
public static class LimitLines
{
    public static IReadOnlyList<(string Title, IReadOnlyList<LimitLine> Lines)> Of(Region region) =>
    [
        ("Cooked, in the middle", [.. Enum.GetValues<Food>().Select(food => Line(FoodWordsOf(food), CoreLimits.Of(region, food), region))]),
        ("Kept and warmed again",
        [
            Line("Kept hot, at the least", Holding.Hot(region), region),
            Line("Warmed again", Holding.Reheated(region), region),
            Line("The fridge, at the most", Holding.Fridge(region), region),
            Line("Standing out, all together at the most", Holding.Out(region, roomCelsius: 20), region),
        ]),
        ("Leftovers",
        [
            .. Enum.GetValues<LeftoverKind>().Select(kind => Line($"{LeftoverKindWords.Of(kind)}: in the fridge within", Keeping.CoolWithin(region, kind), region)),
            .. Enum.GetValues<LeftoverKind>().Select(kind => Line($"{LeftoverKindWords.Of(kind)}: eaten within", Keeping.Keep(region, kind), region)),
            .. Enum.GetValues<LeftoverKind>().Select(kind => Line($"{LeftoverKindWords.Of(kind)}: frozen, at its best for", Freezing.Keep(region, kind), region)),
        ]),
    ];

    static LimitLine Line(string what, Published<Limit> published, Region region) => published switch
    {
        Published<Limit>.Is { Limit: var limit } => new(what, RegionWords.Heat(limit.Celsius, region) + (limit.For is { } span ? $" for {RegionWords.Length(span)}" : ""), limit.Source),
        Published<Limit>.None => new(what, "no limit held", null),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    static LimitLine Line(string what, Published<TimeLimit> published, Region region) => published switch
    {
        Published<TimeLimit>.Is { Limit: { Most.Ticks: 0 } limit } => new(what, "does not freeze well", limit.Source),
        Published<TimeLimit>.Is { Limit: var limit } => new(what, RegionWords.Span(limit), limit.Source),
        Published<TimeLimit>.None => new(what, "no limit held", null),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    static string FoodWordsOf(Food food) => food switch
    {
        Food.WholePoultry => "Whole poultry",
        Food.PoultryPieces => "Poultry pieces",
        Food.Stuffing => "Stuffing",
        Food.GroundMeat => "Mince, burgers, sausages",
        Food.WholeCut => "Beef, veal and lamb, whole cuts",
        Food.RolledJoint => "Rolled and tied joints",
        Food.Pork => "Pork",
        Food.RawHam => "Raw ham",
        Food.Fish => "Fish",
        Food.EggDish => "Egg dishes",
        Food.Casserole => "Casseroles",
        _ => throw new System.Diagnostics.UnreachableException(food.ToString()),
    };
}
