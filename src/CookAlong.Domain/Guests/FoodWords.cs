using System.Collections.Frozen;
using System.Collections.Immutable;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Guests;

/// <summary>What the words of an ingredient's name say of it.</summary>
/// <param name="Certain">It holds these.</param>
/// <param name="Ask">Some are made with these, or it claims to be free of them: the label decides.</param>
/// <param name="IsKnown">False: the word that says what it is ("bhaji" in "onion bhaji") is not in the table, so too little is known.</param>
/// <param name="IsMain">It fills a plate.</param>
public sealed record FoodRead(ImmutableHashSet<Trait> Certain, ImmutableHashSet<Trait> Ask, bool IsKnown, bool IsMain)
{
    /// <summary>It says which part ("rib", "fillet"), and the word before it of what.</summary>
    public bool IsPart { get; init; }
}

/// <summary>The table food-words.txt: which words of an ingredient's name stand for what.</summary>
public static class FoodWords
{
    /// <summary>Words in the longest entry.</summary>
    const int Longest = 4;

    static readonly FrozenDictionary<string, FoodRead> table = Load();

    /// <summary>What takes the place of milk, meat, egg and wheat is made of each other, and of these; common practice, no source.</summary>
    static readonly Trait[] substitutes = [Trait.Soya, Trait.Nuts, Trait.Gluten, Trait.Wheat, Trait.Egg, Trait.Milk, Trait.Celery, Trait.Mustard, Trait.Lupin];

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
            var (found, length) = At(words, at);
            if (FreeOf(words, at) is var (traits, after) && after > at)
            {
                freed.UnionWith(traits);
                if (length == 1)
                {
                    at = after;
                    continue;
                }
                // "vegan butter" has a line of its own, which knows more than the claim.
            }

            if (found is not null)
            {
                certain.UnionWith(found.Certain);
                ask.UnionWith(found.Ask);
                (isKnown, isMain) = (isKnown || (at <= head && head < at + length), isMain || found.IsMain);
            }

            at += length;
        }

        freed.UnionWith(freed.SelectMany(trait => trait switch { Trait.Gluten => (Trait[])[Trait.Wheat], Trait.Meat => [Trait.Pork], _ => [] }).ToList());
        if (freed.Overlaps(certain))
        {
            // What claims to be free of a thing may still hold it, and holds something else instead; its label says.
            ask.UnionWith(substitutes.Where(trait => !freed.Contains(trait)));
            ask.UnionWith(freed.Where(certain.Contains));
            certain.ExceptWith(freed);
        }

        ask.ExceptWith(certain);
        return new FoodRead(certain.ToImmutable(), ask.ToImmutable(), isKnown, isMain);
    }

    /// <summary>What comes after "with" says how it comes; the word before says what it is, and before a part ("celery ribs") of what.</summary>
    /// <returns>-1 when it is nothing but parts.</returns>
    static int LastOfHead(string name)
    {
        var words = FoodNames.Words(FoodNames.Head(name));
        var with = Array.FindIndex(words, word => word is "with" or "for" or "in" or "from" or "on");
        return Array.FindLastIndex(words[..(with > 0 ? with : words.Length)], word => !table.TryGetValue(word, out var read) || !read.IsPart);
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
                [.. what.Where(one => one is not ("plain" or "main" or "part") && one[0] != '?').Select(TraitNamed)],
                [.. what.Where(one => one[0] == '?').Select(one => TraitNamed(one[1..]))],
                IsKnown: true,
                what.Contains("main"))
            { IsPart = what.Contains("part") };
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
