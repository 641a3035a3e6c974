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
        ("Cooked, in the middle", Merged(Enum.GetValues<Food>().Select(food => Line(FoodWordsOf(food), CoreLimits.Of(region, food), region)))),
        ("Kept and warmed again", Merged(
        [
            Line("Kept hot, at the least", Holding.Hot(region), region),
            Line("Warmed again", Holding.Reheated(region), region),
            Line("The fridge, at the most", Holding.Fridge(region), region),
            Line("Standing out, all together at the most", Holding.Out(region, roomCelsius: 20)),
        ])),
        ("Leftovers, in the fridge within", OfKinds(kind => Keeping.CoolWithin(region, kind))),
        ("Leftovers, eaten within", OfKinds(kind => Keeping.Keep(region, kind))),
        ("Leftovers, frozen, at their best for", OfKinds(kind => Freezing.Keep(region, kind))),
    ];

    static IReadOnlyList<LimitLine> OfKinds(Func<LeftoverKind, Published<TimeLimit>> published) =>
        Merged(Enum.GetValues<LeftoverKind>().Select(kind => Line(LeftoverKindWords.Of(kind), published(kind))));

    /// <summary>What is the same for many is said once.</summary>
    static IReadOnlyList<LimitLine> Merged(IEnumerable<LimitLine> lines) =>
    [
        .. lines.GroupBy(line => (line.Says, line.Source))
            .Select(alike => alike.First() with { For = string.Join("; ", alike.Select(line => line.For)) }),
    ];

    static LimitLine Line(string what, Published<Limit> published, Region region) => published switch
    {
        Published<Limit>.Is { Limit: var limit } => new(what, RegionWords.Heat(limit.Celsius, region) + (limit.For is { } span ? $"{(limit.OffTheHeat ? ", then rested for" : " for")} {RegionWords.Length(span)}" : ""), limit.Source),
        Published<Limit>.None => new(what, "no limit held", null),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    static LimitLine Line(string what, Published<TimeLimit> published) => published switch
    {
        Published<TimeLimit>.Is { Limit: { Most.Ticks: 0 } limit } => new(what, "does not freeze well", limit.Source),
        Published<TimeLimit>.Is { Limit: var limit } => new(what, RegionWords.Span(limit), limit.Source),
        Published<TimeLimit>.None => new(what, "no limit held", null),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    static string FoodWordsOf(Food food) => food switch
    {
        Food.WholePoultry => "Whole poultry",
        Food.PoultryPieces => "Poultry pieces and poultry mince",
        Food.Stuffing => "Stuffing",
        Food.GroundMeat => "Mince, burgers and sausages of beef, veal, lamb and pork",
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
