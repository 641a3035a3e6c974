namespace CookAlong.Domain.Guests;

/// <summary>
/// What an ingredient holds that somebody may not eat. The first fourteen are those of Regulation (EU) 1169/2011, Annex II;
/// the nine of the USA (FALCPA 2004, FASTER Act 2021) are among them, with wheat beside the other cereals.
/// </summary>
public enum Trait
{
    Gluten,
    Crustaceans,
    Egg,
    Fish,
    Peanut,
    Soya,
    Milk,
    Nuts,
    Celery,
    Mustard,
    Sesame,
    Sulphites,
    Lupin,
    Molluscs,

    Wheat,
    Meat,
    Pork,
    Gelatine,

    /// <summary>Some hard cheeses are made with a calf's.</summary>
    Rennet,
    Honey,
    Alcohol,
}

public static class Traits
{
    /// <summary>Regulation (EU) 1169/2011, Annex II, in its order.</summary>
    public static IReadOnlyList<Trait> OfTheUnion { get; } = [.. Enum.GetValues<Trait>().TakeWhile(trait => trait != Trait.Wheat)];

    /// <summary>FALCPA 2004 and FASTER Act 2021.</summary>
    public static IReadOnlyList<Trait> OfTheUnitedStates { get; } =
        [Trait.Milk, Trait.Egg, Trait.Fish, Trait.Crustaceans, Trait.Nuts, Trait.Peanut, Trait.Wheat, Trait.Soya, Trait.Sesame];
}
