using System.Collections.Frozen;
using System.Collections.Immutable;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Guests;

/// <summary>What the words of an ingredient's name say of it.</summary>
/// <param name="Certain">It holds these.</param>
/// <param name="Ask">Some are made with these, or it claims to be free of them: the label decides.</param>
/// <param name="IsKnown">False: the word that says what it is ("bhaji" in "onion bhaji") is not in the table, so too little is known.</param>
/// <param name="IsMain">It fills a plate.</param>
public sealed record FoodRead(ImmutableHashSet<Trait> Certain, ImmutableHashSet<Trait> Ask, bool IsKnown, bool IsMain);

/// <summary>The table food-words.txt: which words of an ingredient's name stand for what.</summary>
public static class FoodWords
{
    /// <summary>Words in the longest entry.</summary>
    const int Longest = 4;

    static readonly FrozenDictionary<string, FoodRead> table = Load();

    static readonly FrozenDictionary<string, Trait[]> claims = new Dictionary<string, Trait[]>(StringComparer.Ordinal)
    {
        ["vegan"] = [Trait.Milk, Trait.Egg, Trait.Meat, Trait.Pork, Trait.Fish, Trait.Gelatine, Trait.Rennet, Trait.Honey, Trait.Crustaceans, Trait.Molluscs],
        ["vegetarian"] = [Trait.Meat, Trait.Pork, Trait.Fish, Trait.Gelatine, Trait.Rennet, Trait.Crustaceans, Trait.Molluscs],
        ["veggie"] = [Trait.Meat, Trait.Pork, Trait.Fish, Trait.Gelatine, Trait.Rennet, Trait.Crustaceans, Trait.Molluscs],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Number of entries.</summary>
    public static int Count => table.Count;

    public static FoodRead Read(string name)
    {
        var words = FoodNames.Words(name);
        var head = LastOfHead(name);
        var certain = ImmutableHashSet.CreateBuilder<Trait>();
        var ask = ImmutableHashSet.CreateBuilder<Trait>();
        var freed = new HashSet<Trait>();
        var (isKnown, isMain) = (false, false);
        for (var at = 0; at < words.Length;)
        {
            if (FreeOf(words, at) is var (traits, after) && after > at)
            {
                freed.UnionWith(traits);
                at = after;
                continue;
            }

            var (found, length) = At(words, at);
            if (found is not null)
            {
                certain.UnionWith(found.Certain);
                ask.UnionWith(found.Ask);
                (isKnown, isMain) = (isKnown || (at <= head && head < at + length), isMain || found.IsMain);
            }

            at += length;
        }

        // What claims to be free of a thing may still hold it; its label says.
        foreach (var trait in freed.Where(certain.Contains).ToList())
        {
            certain.Remove(trait);
            ask.Add(trait);
        }

        ask.ExceptWith(certain);
        return new FoodRead(certain.ToImmutable(), ask.ToImmutable(), isKnown, isMain);
    }

    /// <summary>What comes after a comma or "with" says how it comes; the word before says what it is.</summary>
    static int LastOfHead(string name)
    {
        var words = FoodNames.Words(name.Split([',', '(', ';', ':'], 2)[0]);
        var with = Array.FindIndex(words, word => word is "with" or "for" or "in" or "from" or "on");
        return (with > 0 ? with : words.Length) - 1;
    }

    static (FoodRead? Found, int Length) At(string[] words, int at)
    {
        for (var length = Math.Min(Longest, words.Length - at); length > 0; length--)
        {
            if (table.TryGetValue(string.Join(' ', words.AsSpan(at, length)!), out var found))
            {
                return (found, length);
            }
        }

        return (null, 1);
    }

    /// <summary>"gluten-free", "free from milk", "without egg", "vegan".</summary>
    static (IEnumerable<Trait> Traits, int After) FreeOf(string[] words, int at) =>
        at + 1 < words.Length && words[at + 1] == "free" && Needs.TraitsOf(words[at]) is { Length: > 0 } free ? (free, at + 2)
        : at + 2 < words.Length && words[at] == "free" && words[at + 1] is "from" or "of" && Needs.TraitsOf(words[at + 2]) is { Length: > 0 } from ? (from, at + 3)
        : at + 1 < words.Length && words[at] is "without" or "no" && Needs.TraitsOf(words[at + 1]) is { Length: > 0 } without ? (without, at + 2)
        : claims.TryGetValue(words[at], out var claim) ? (claim, at + 1)
        : ([], at);

    static FrozenDictionary<string, FoodRead> Load()
    {
        using var file = new StreamReader(typeof(FoodWords).Assembly.GetManifestResourceStream("food-words.txt")!);
        var read = new Dictionary<string, FoodRead>(StringComparer.Ordinal);
        while (file.ReadLine() is { } line)
        {
            if (line.Length == 0 || line.StartsWith('#'))
            {
                continue;
            }

            var sides = line.Split('=');
            var what = sides[1].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            var food = new FoodRead(
                [.. what.Where(one => one is not ("plain" or "main") && one[0] != '?').Select(TraitNamed)],
                [.. what.Where(one => one[0] == '?').Select(one => TraitNamed(one[1..]))],
                IsKnown: true,
                what.Contains("main"));
            foreach (var words in sides[0].Split(','))
            {
                // A later line may say more exactly what an earlier one only supposed.
                read[FoodNames.Key(words)] = food;
            }
        }

        return read.ToFrozenDictionary(StringComparer.Ordinal);
    }

    static Trait TraitNamed(string name) => Enum.Parse<Trait>(name, ignoreCase: true);
}
