using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Shopping;

/// <summary>One thing to buy, for all the dishes that want it.</summary>
/// <param name="Key">The same for the same thing whatever the meal's dishes and numbers: what a tick holds on to.</param>
/// <param name="Amounts">Everything wanted, each kind of measure once; empty when nobody says how much.</param>
/// <param name="HasSome">Some of it is wanted besides, nobody says how much.</param>
public sealed record ShoppingLine(string Key, string Name, ImmutableArray<Amount> Amounts, bool HasSome, Aisle Aisle, ImmutableArray<ShoppingUse> Uses)
{
    static readonly string[] sizes = ["large", "medium", "small", "big"];

    /// <summary>Gathers what dishes want of one thing.</summary>
    public static ShoppingLine Of(string key, IReadOnlyCollection<ShoppingUse> uses)
    {
        var name = uses.Select(use => use.Ingredient.Name).MaxBy(one => one.Length)!;
        return new(
            key,
            name,
            [.. Merge([.. uses.Select(use => use.Amount).OfType<Amount>()], name)],
            uses.Any(use => use.Amount is null),
            Aisles.Of(uses.First().Ingredient),
            [.. uses]);
    }

    /// <summary>"2 large Onions" and "onion" are bought as one; "oats" and "oats, gluten-free" never.</summary>
    public static string KeyOf(string name)
    {
        var words = FoodNames.Words(name);
        string[] plain = [.. words.Where(word => !sizes.Contains(word))];
        return plain.Length > 0 ? string.Join(' ', plain) : words.Length > 0 ? string.Join(' ', words) : name.Trim();
    }

    /// <summary>Each kind of measure once. What can be weighed is weighed together, so nothing is asked for twice in two measures.</summary>
    public static IEnumerable<Amount> Merge(ImmutableArray<Amount> amounts, string food)
    {
        var kinds = amounts.GroupBy(amount => (amount.Unit.Dimension, amount.Unit.Dimension == Dimension.Own ? amount.Unit.Name : "")).ToList();
        if (kinds.Count > 1 && kinds.Any(kind => kind.Key.Dimension == Dimension.Mass))
        {
            var weighed = kinds.ToLookup(kind => kind.All(amount => Weighing.Grams(amount, food) is not null));
            yield return new Amount(weighed[true].SelectMany(kind => kind).Sum(amount => Weighing.Grams(amount, food)!.Value), Units.Gram);
            foreach (var kind in weighed[false])
            {
                yield return Sum(kind);
            }

            yield break;
        }

        foreach (var kind in kinds)
        {
            yield return Sum(kind);
        }
    }

    /// <summary>In the unit they share, the largest of their spoons and cups, else in grams, millilitres, pieces or millimetres.</summary>
    static Amount Sum(IEnumerable<Amount> kind)
    {
        var all = kind.ToList();
        var unit = all.Select(amount => amount.Unit).Distinct().ToList() is [var shared] ? shared : all[0].Unit.Dimension switch
        {
            Dimension.Mass => Units.Gram,
            Dimension.Volume when all.All(amount => amount.Unit.IsSpoonOrCup) => all.MaxBy(amount => amount.Unit.Size).Unit,
            Dimension.Volume => Units.Millilitre,
            Dimension.Count => Units.Piece,
            Dimension.Length => Units.Millimetre,
            Dimension.Own => all[0].Unit,
            _ => throw new System.Diagnostics.UnreachableException($"An amount of something unknown: {all[0].Unit.Dimension}."),
        };
        return new Amount(all.Sum(amount => amount.In(unit).Value), unit);
    }
}

/// <param name="Amount">As much as the dish takes for its portions; null for "some".</param>
public sealed record ShoppingUse(Dish Dish, Ingredient Ingredient, Amount? Amount);
