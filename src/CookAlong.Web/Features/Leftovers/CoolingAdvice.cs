using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;
using Region = CookAlong.Domain.FoodSafety.Region;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>One way of putting leftovers away, and how long their middle takes to cool in the fridge, as slow as it may be.</summary>
/// <param name="InTime">By the household's authority; null = it prints nothing that this can be held against.</param>
public sealed record CoolingWay(string How, ExpectedCooling Expected, bool? InTime);

/// <summary>How to cool a dish's leftovers: as they stand, and as they should be put away. Size is what matters.</summary>
public static class CoolingAdvice
{
    /// <summary>°C of a fridge's air.</summary>
    const double Fridge = 4;

    /// <summary>Kilograms of a piece, and metres of what is spread in a dish: each cools in time by the model, the thinner one within an hour (rice).</summary>
    const double Piece = .15;

    const double Shallow = .02, Thin = .01;

    /// <summary>Metres in a full pot; own estimate, no source.</summary>
    const double Pot = .12;

    /// <summary>Grams of a portion where no main ingredient was weighed; own estimate, no source.</summary>
    const decimal UsualPortion = 200;

    // Each is days of heat reckoned minute by minute, and only a whole piece is another size each time.
    static readonly TwoStageCooling Rule = TwoStageCooling.FoodCode;
    static readonly ExpectedCooling OfPieces = ExpectedCooling.OfPiece(Piece, Cover.Bare, Fridge, Rule);
    static readonly ExpectedCooling OfPot = ExpectedCooling.OfLayer(Pot, Cover.Wrapped, Fridge, Rule);
    static readonly ExpectedCooling OfShallow = ExpectedCooling.OfLayer(Shallow, Cover.Bare, Fridge, Rule);
    static readonly ExpectedCooling OfThin = ExpectedCooling.OfLayer(Thin, Cover.Bare, Fridge, Rule);

    public static IReadOnlyList<CoolingWay> Of(DishLeft left, Region region)
    {
        var (layer, cooling) = left.Times.InFridge?.Limit.Most <= TimeSpan.FromHours(1) ? (Thin, OfThin) : (Shallow, OfShallow);
        CoolingWay Way(string how, ExpectedCooling expected) => new(how, expected, InTime(expected, left, region));
        return IsInPieces(left)
            ?
            [
                Way($"In one piece of {Words(Kilograms(left))}, wrapped", ExpectedCooling.OfPiece(Kilograms(left), Cover.Wrapped, Fridge, Rule)),
                Way($"Cut into pieces of {Words(Piece)}, apart and open until cold", OfPieces),
            ]
            :
            [
                Way("In its full pot, 12 cm deep, lid on", OfPot),
                Way(FormattableString.Invariant($"Spread {layer * 100:0} cm deep in a shallow dish, open until cold"), cooling),
            ];
    }

    /// <summary>Of the main ingredients as they were bought, for the portions left.</summary>
    public static double Kilograms(DishLeft left) => (double)(GramsOfAPortion(left.Dish) * left.Portions / 1000);

    /// <summary>Meat on the bone or carved, not something cooked in a sauce or with grain.</summary>
    static bool IsInPieces(DishLeft left) => left.Kinds.All(kind => kind is LeftoverKind.MeatPoultryOrFish or LeftoverKind.Ham);

    static decimal GramsOfAPortion(Dish dish)
    {
        var mains = dish.Ingredients.Where(one => one.Quantity is not null && FoodWords.Read(one.Name).IsMain)
            .Sum(one => Weighing.Grams(new Amount(one.Quantity!.Value, Units.Of(one.Unit)), one.Name) ?? 0);
        return mains > 0 && dish.Serves > 0 ? mains / dish.Serves : UsualPortion;
    }

    /// <summary>Where no cooling is printed, what counts is the time until the fridge: by then it must not be warm any more.</summary>
    static bool? InTime(ExpectedCooling expected, DishLeft left, Region region) => (TwoStageCooling.Of(region), left.Times.InFridge) switch
    {
        (Published<TwoStageCooling>.Is, _) => expected.InTime,
        (_, { } inFridge) => expected.First <= inFridge.Limit.Most,
        _ => null,
    };

    static string Words(double kilograms) => kilograms < 1
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Round(kilograms * 20) * 50:0} g")
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{kilograms:0.#} kg");
}
