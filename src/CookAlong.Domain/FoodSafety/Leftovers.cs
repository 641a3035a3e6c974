using System.Collections.Immutable;
using static CookAlong.Domain.FoodSafety.Sources;

namespace CookAlong.Domain.FoodSafety;

/// <summary>What is left over, as far as its keeping goes.</summary>
public enum LeftoverKind
{
    MeatPoultryOrFish,
    Rice,
    Pasta,
    SoupOrStew,
    Stuffing,
    Gravy,
    Ham,
    EggDish,
    Salad,
    Vegetables,
}

/// <summary>When leftovers have to be in the fridge, and until when they are eaten.</summary>
public static class Leftovers
{
    static readonly Source Illinois = new("University of Illinois Extension", "Turkey for the Holidays", null, "leftovers");

    static readonly TimeLimit UkCool = new("uk-cool", TimeSpan.FromHours(1), TimeSpan.FromHours(2), UkHome);
    static readonly TimeLimit UkCoolRice = new("uk-cool-rice", TimeSpan.Zero, TimeSpan.FromHours(1), UkHome with { FromMemory = true, Place = "cooked rice" });
    static readonly TimeLimit UsCool = new("us-cool", TimeSpan.Zero, TimeSpan.FromHours(2), UsHome);
    static readonly TimeLimit UkKeep = new("uk-keep", TimeSpan.Zero, TimeSpan.FromDays(2), UkHome);
    static readonly TimeLimit UkKeepRice = new("uk-keep-rice", TimeSpan.Zero, TimeSpan.FromDays(1), UkHome);

    public static ImmutableArray<TimeLimit> All => [UkCool, UkCoolRice, UsCool, UkKeep, UkKeepRice, .. Enum.GetValues<LeftoverKind>().Select(UsKeep).DistinctBy(limit => limit.Id)];

    /// <summary>How long after cooking it is to be in the fridge.</summary>
    public static Published<TimeLimit> CoolWithin(Region region, LeftoverKind kind) => region switch
    {
        Region.UnitedKingdom or Region.Scotland => new Published<TimeLimit>.Is(kind == LeftoverKind.Rice ? UkCoolRice : UkCool),
        Region.UnitedStates => new Published<TimeLimit>.Is(UsCool),
        Region.Canada => new Published<TimeLimit>.None(region),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    /// <summary>How long it keeps in the fridge. Where a span of days is printed, its shorter end is <see cref="TimeLimit.Least"/> and decides (<see cref="LeftoverTimes"/>).</summary>
    public static Published<TimeLimit> Keep(Region region, LeftoverKind kind) => region switch
    {
        Region.UnitedKingdom or Region.Scotland => new Published<TimeLimit>.Is(kind == LeftoverKind.Rice ? UkKeepRice : UkKeep),
        Region.UnitedStates => new Published<TimeLimit>.Is(UsKeep(kind)),
        Region.Canada => new Published<TimeLimit>.None(region),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    static TimeLimit UsKeep(LeftoverKind kind) => kind switch
    {
        LeftoverKind.MeatPoultryOrFish => Days("us-keep-meat", 3, 4, ColdChart),
        LeftoverKind.Rice => Days("us-keep-rice", 4, 6, FoodKeeper),
        LeftoverKind.Pasta => Days("us-keep-pasta", 3, 5, FoodKeeper),
        LeftoverKind.SoupOrStew => Days("us-keep-soup", 3, 4, ColdChart),
        LeftoverKind.Stuffing => Days("us-keep-stuffing", 1, 2, Illinois),
        LeftoverKind.Gravy => Days("us-keep-gravy", 1, 2, FoodKeeper),
        LeftoverKind.Ham => Days("us-keep-ham", 3, 4, ColdChart),
        LeftoverKind.EggDish => Days("us-keep-egg", 3, 4, FoodKeeper),
        LeftoverKind.Salad => Days("us-keep-salad", 3, 4, ColdChart),
        LeftoverKind.Vegetables => Days("us-keep-vegetables", 3, 4, FoodKeeper),
        _ => throw new System.Diagnostics.UnreachableException(kind.ToString()),
    };

    static TimeLimit Days(string id, double least, double most, Source source) => new(id, TimeSpan.FromDays(least), TimeSpan.FromDays(most), source);
}
