using System.Collections.Frozen;
using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Guests;

/// <summary>What a guest must not eat, and what they must be asked about.</summary>
/// <param name="Never">Each with the guest's own word for it.</param>
/// <param name="Ask">A food of this kind may be eaten by some who say so, and not by others.</param>
/// <param name="Words">Avoided things that are no known kind: the word itself is looked for.</param>
/// <param name="Unknown">Diets and avoided things that mean nothing here, so that only asking helps.</param>
public sealed record Needs(
    ImmutableDictionary<Trait, string> Never, ImmutableDictionary<Trait, string> Ask, ImmutableArray<string> Words, ImmutableArray<string> Unknown)
{
    public bool IsNone => Never.IsEmpty && Ask.IsEmpty && Words.IsEmpty && Unknown.IsEmpty;

    static readonly FrozenDictionary<string, Trait[]> kinds = new Dictionary<string, Trait[]>(StringComparer.Ordinal)
    {
        ["gluten"] = [Trait.Gluten],
        ["cereal containing gluten"] = [Trait.Gluten],
        ["wheat"] = [Trait.Wheat],
        ["crustacean"] = [Trait.Crustaceans],
        ["shellfish"] = [Trait.Crustaceans, Trait.Molluscs],
        ["seafood"] = [Trait.Crustaceans, Trait.Molluscs, Trait.Fish],
        ["mollusc"] = [Trait.Molluscs],
        ["mollusk"] = [Trait.Molluscs],
        ["egg"] = [Trait.Egg],
        ["fish"] = [Trait.Fish],
        ["peanut"] = [Trait.Peanut],
        ["groundnut"] = [Trait.Peanut],
        ["soya"] = [Trait.Soya],
        ["soy"] = [Trait.Soya],
        ["soybean"] = [Trait.Soya],
        ["milk"] = [Trait.Milk],
        // Most whom cow's milk makes ill are made ill by that of goats and sheep too; from memory.
        ["cow milk"] = [Trait.Milk],
        ["milk protein"] = [Trait.Milk],
        ["cow milk protein"] = [Trait.Milk],
        ["casein"] = [Trait.Milk],
        ["whey"] = [Trait.Milk],
        ["dairy"] = [Trait.Milk],
        ["lactose"] = [Trait.Milk],
        ["nut"] = [Trait.Nuts],
        ["tree nut"] = [Trait.Nuts],
        ["celery"] = [Trait.Celery],
        ["celeriac"] = [Trait.Celery],
        ["mustard"] = [Trait.Mustard],
        ["sesame"] = [Trait.Sesame],
        ["sulphite"] = [Trait.Sulphites],
        ["sulfite"] = [Trait.Sulphites],
        ["sulphur dioxide"] = [Trait.Sulphites],
        ["sulphur dioxide and sulphite"] = [Trait.Sulphites],
        ["lupin"] = [Trait.Lupin],
        ["meat"] = [Trait.Meat],
        ["pork"] = [Trait.Pork],
        ["gelatine"] = [Trait.Gelatine],
        ["gelatin"] = [Trait.Gelatine],
        ["honey"] = [Trait.Honey],
        ["alcohol"] = [Trait.Alcohol],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>What makes a diet of a thing avoided: "sesame free", "allergic to fish".</summary>
    static readonly string[] without = ["no", "free", "from", "allergy", "allergic", "to", "intolerance", "intolerant"];

    static readonly Trait[] animals = [Trait.Meat, Trait.Fish, Trait.Crustaceans, Trait.Molluscs, Trait.Gelatine];

    /// <summary>The kinds that a word for an allergen means, in one or many; none when it is another word.</summary>
    public static ImmutableArray<Trait> TraitsOf(string word) => kinds.TryGetValue(FoodNames.Key(word), out var traits) ? [.. traits] : [];

    public static Needs Of(Guest guest)
    {
        var (never, ask) = (new Dictionary<Trait, string>(), new Dictionary<Trait, string>());
        var (words, unknown) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>());
        foreach (var avoided in guest.Avoids)
        {
            var traits = TraitsOf(avoided);
            if (traits.IsEmpty)
            {
                // "almonds", "goat's cheese": a food of a kind, which hides where the others of its kind do.
                words.Add(avoided);
                var read = FoodWords.Read(avoided);
                Add(ask, read.Certain.Union(read.Ask).Order(), avoided);
                if (!read.IsKnown)
                {
                    unknown.Add(avoided);
                }
            }

            Avoid(traits, avoided);
        }

        foreach (var diet in guest.Diets)
        {
            if (DietOf(diet) is var (forbidden, doubtful))
            {
                Add(never, forbidden, diet);
                Add(ask, doubtful, diet);
            }
            else if (TraitsOf(string.Join(' ', FoodNames.Words(diet).Except(without))) is { IsEmpty: false } traits)
            {
                Avoid(traits, diet);
            }
            else
            {
                unknown.Add(diet);
            }
        }

        return new Needs(never.ToImmutableDictionary(), ask.Where(one => !never.ContainsKey(one.Key)).ToImmutableDictionary(), words.ToImmutable(), unknown.ToImmutable());

        void Avoid(IReadOnlyCollection<Trait> traits, string word)
        {
            Add(never, traits, word);
            if (traits.Contains(Trait.Nuts))
            {
                // Many who say nuts mean peanuts too.
                Add(ask, [Trait.Peanut], word);
            }
        }
    }

    /// <summary>What a diet forbids, and what some who keep it do not eat; null for one that is not known.</summary>
    static (Trait[] Never, Trait[] Ask)? DietOf(string diet) => string.Join(' ', FoodNames.Words(diet)) switch
    {
        "vegetarian" or "lacto ovo vegetarian" => (animals, [Trait.Rennet]),
        "vegan" or "plant based" => ([.. animals, Trait.Milk, Trait.Egg, Trait.Honey, Trait.Rennet], []),
        "pescetarian" or "pescatarian" => ([Trait.Meat], [Trait.Gelatine, Trait.Rennet]),
        "no meat" => ([Trait.Meat], [Trait.Gelatine]),
        "no pork no alcohol" or "no pork and no alcohol" => ([Trait.Pork, Trait.Alcohol], [Trait.Gelatine]),
        "halal" => ([Trait.Pork, Trait.Alcohol], [Trait.Meat, Trait.Gelatine, Trait.Rennet]),
        "no pork" => ([Trait.Pork], [Trait.Gelatine]),
        "no alcohol" or "alcohol free" => ([Trait.Alcohol], []),
        "coeliac" or "celiac" or "gluten free" or "no gluten" => ([Trait.Gluten], []),
        "lactose free" or "dairy free" or "milk free" or "no dairy" => ([Trait.Milk], []),
        "egg free" or "no egg" => ([Trait.Egg], []),
        "nut free" or "no nut" => ([Trait.Nuts, Trait.Peanut], []),
        _ => null,
    };

    static void Add(Dictionary<Trait, string> to, IEnumerable<Trait> traits, string word)
    {
        foreach (var trait in traits)
        {
            to.TryAdd(trait, word);
        }
    }
}
