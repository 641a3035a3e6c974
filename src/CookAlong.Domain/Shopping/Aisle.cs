using System.Collections.Frozen;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Shopping;

/// <summary>Where a thing stands in a shop, in the order of a first visit; a household arranges them as its own shop does.</summary>
public enum Aisle
{
    Produce,
    Bread,
    MeatAndFish,
    DairyAndEggs,
    DryGoods,
    TinsAndJars,
    SpicesAndBaking,
    Frozen,
    Drinks,
    Household,
    Other,

    /// <summary>Water from the tap: on the list so that nothing is lost, but nobody buys it.</summary>
    AtHome,
}

/// <summary>Tells an ingredient's aisle from its name, by the table aisle-words.txt.</summary>
public static class Aisles
{
    static readonly FrozenDictionary<string, Aisle> table = Load();

    static readonly FrozenSet<string> containers = FrozenSet.Create(StringComparer.Ordinal, "tin", "can", "jar", "bottle", "tube");

    public static Aisle Of(Ingredient ingredient) => Of(ingredient.Name, Units.Of(ingredient.Unit));

    /// <summary>The last words of the name count: "lemon juice" stands elsewhere than a lemon.</summary>
    public static Aisle Of(string name, Unit unit)
    {
        var words = FoodNames.Words(FoodNames.Head(name));
        for (var to = words.Length; to > 0; to--)
        {
            for (var from = 0; from < to; from++)
            {
                if (table.TryGetValue(string.Join(' ', words[from..to]), out var aisle))
                {
                    return aisle == Aisle.Produce && containers.Contains(unit.Name) ? Aisle.TinsAndJars : aisle;
                }
            }
        }

        var read = FoodWords.Read(name);
        return containers.Contains(unit.Name) ? Aisle.TinsAndJars
            : read.Certain.Overlaps([Trait.Meat, Trait.Fish, Trait.Crustaceans, Trait.Molluscs]) ? Aisle.MeatAndFish
            : read.Certain.Overlaps([Trait.Milk, Trait.Egg]) ? Aisle.DairyAndEggs
            : read.Certain.Contains(Trait.Alcohol) ? Aisle.Drinks
            : Aisle.Other;
    }

    static FrozenDictionary<string, Aisle> Load()
    {
        using var file = new StreamReader(typeof(Aisles).Assembly.GetManifestResourceStream("aisle-words.txt")!);
        var read = new Dictionary<string, Aisle>(StringComparer.Ordinal);
        while (file.ReadLine() is { } line)
        {
            if (line.Split(':', 2) is [var aisle, var words] && !line.StartsWith('#'))
            {
                foreach (var word in words.Split(','))
                {
                    read[FoodNames.Key(word)] = Enum.Parse<Aisle>(aisle);
                }
            }
        }

        return read.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
