using System.Collections.Immutable;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Web.Features.Dishes.Roasts;

/// <summary>What a dish says of its joint; whoever cooks it says the rest.</summary>
/// <param name="Cut">Null = its words name none, or more than one.</param>
/// <param name="Kilograms">Null = it does not say.</param>
public sealed record JointGuess(Cut? Cut, double? Kilograms)
{
    static readonly (string Words, Cut Cut)[] Names =
    [
        ("turkey breast", Domain.Doneness.Cut.TurkeyBreast), ("turkey", Domain.Doneness.Cut.WholeTurkey), ("chicken", Domain.Doneness.Cut.WholeChicken),
        ("duck", Domain.Doneness.Cut.WholeDuck), ("goose", Domain.Doneness.Cut.WholeGoose), ("rib of beef", Domain.Doneness.Cut.BeefRib),
        ("beef rib", Domain.Doneness.Cut.BeefRib), ("beef fillet", Domain.Doneness.Cut.BeefFillet), ("fillet of beef", Domain.Doneness.Cut.BeefFillet),
        ("topside", Domain.Doneness.Cut.BeefRound), ("silverside", Domain.Doneness.Cut.BeefRound), ("leg of lamb", Domain.Doneness.Cut.LambLegOnTheBone),
        ("lamb leg", Domain.Doneness.Cut.LambLegOnTheBone), ("pork loin", Domain.Doneness.Cut.PorkLoin), ("loin of pork", Domain.Doneness.Cut.PorkLoin),
        ("pork shoulder", Domain.Doneness.Cut.PorkShoulder), ("shoulder of pork", Domain.Doneness.Cut.PorkShoulder), ("pork fillet", Domain.Doneness.Cut.PorkFillet),
        ("rib of veal", Domain.Doneness.Cut.VealRib), ("loin of veal", Domain.Doneness.Cut.VealLoin), ("gammon", Domain.Doneness.Cut.RawHam),
    ];

    /// <summary>Seconds a probe needs to settle, in which the core is at least that warm already; common practice, no source.</summary>
    const int ReadingTakes = 30;

    public static JointGuess Of(Dish dish)
    {
        var meats = dish.Ingredients.Where(one => FoodWords.Read(one.Name) is { IsMain: true } read && read.Certain.Contains(Trait.Meat)).ToList();
        var words = $" {string.Join(" | ", meats.Select(one => one.Name).Append(dish.Name).Select(FoodNames.Key))} ";
        var cut = Names.Where(one => words.Contains($" {FoodNames.Key(one.Words)} ", StringComparison.Ordinal)).Select(one => (Cut?)one.Cut).FirstOrDefault();
        var heaviest = meats.Where(one => one.Quantity is not null)
            .Select(one => Weighing.Grams(new Amount(one.Quantity!.Value, Units.Of(one.Unit)), one.Name)).Max();
        return new(cut, heaviest is { } grams && grams > 0 ? (double)(grams / 1000) : null);
    }

    /// <summary>The core temperature that the household's authority asks for; null = it has none here.</summary>
    public static Limit? LimitOf(Cut cut, Domain.FoodSafety.Region region) =>
        (CutFood.Of(cut) is { } food ? CoreLimits.Of(region, food) : Holding.Reheated(region)) is Published<Limit>.Is { Limit: var limit } ? limit : null;

    /// <summary>For how many minutes its core must stay at that temperature in the heat, as the table of the household's authority has it; 0 = one reading is enough.</summary>
    public static int MinutesAt(Cut cut, int celsius, Domain.FoodSafety.Region region) =>
        LimitOf(cut, region) is { For: not null, OffTheHeat: false } && CutFood.Of(cut) is { } food
            && KillTables.Of(region, food) is Published<ImmutableArray<KillTable>>.Is { Limit: var tables } && tables.Max(table => table.Seconds(celsius)) is { } seconds
            ? (int)Math.Ceiling((seconds - ReadingTakes) / 60)
            : 0;
}
