using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Intake.MealFiles;

/// <param name="Name">As a dish's "kind" says it.</param>
/// <param name="Holds">How such food usually waits for the table; common practice, no source. Whoever cooks it knows better.</param>
public sealed record KindOfFood(string Name, ImmutableArray<Hold> Holds);

/// <summary>Kinds of food as far as they wait differently. The figures are common practice, no source.</summary>
public static class KindsOfFood
{
    public static ImmutableArray<KindOfFood> All { get; } =
    [
        new("roast joint", [Covered(15, 30, 45, least: 10)]),
        new("roast vegetable", [Side(8, 15, 25), Warm(10, 20, 30)]),
        new("braise", [Covered(20, 40, 60), Warm(60, 90, 120)]),
        new("gratin or bake", [Side(15, 25, 40, least: 5), Warm(20, 40, 60)]),
        new("boiled vegetable", [Covered(5, 10, 15)]),
        new("sauce", [Covered(10, 20, 30)]),
        new("soup", [Covered(20, 40, 60)]),
        new("rice or pasta", [Covered(8, 15, 25)]),
        new("fried", [Side(3, 6, 10), Warm(8, 15, 20)]),
        new("fish", [Covered(3, 6, 10)]),
        new("salad", [new Hold(HoldPlace.Side, 0, 15, 30, 45, 1, null), Fridge(60, 120, 240)]),
        new("pudding", [Covered(10, 20, 30)]),
        new("cold pudding", [Fridge(720, 1440, 2160)]),
        new("bread", [Side(90, 180, 480)]),
    ];

    /// <summary>Null when nobody has said the kind, or it is none of these.</summary>
    public static KindOfFood? Of(string? name) => All.FirstOrDefault(kind => kind.Name == name);

    static Hold Side(int best, int good, int limit, int least = 0) => new(HoldPlace.Side, least, best, good, limit, 1, null);

    static Hold Covered(int best, int good, int limit, int least = 0) => new(HoldPlace.Covered, least, best, good, limit, 1, null);

    static Hold Fridge(int best, int good, int limit) => new(HoldPlace.Fridge, 0, best, good, limit, 1, null);

    // 63 °C and more keeps hot food hot; 60 to 90 is what a domestic oven holds.
    static Hold Warm(int best, int good, int limit) => new(HoldPlace.WarmOven, 0, best, good, limit, 1, new WarmOven(new CelsiusRange(65, 75, 90), 1, 20));
}
