namespace CookAlong.Domain.Doneness;

/// <summary>What lies over a resting joint.</summary>
public enum RestUnder
{
    Nothing,
    Foil,

    /// <summary>Foil, and cloths or towels over it.</summary>
    FoilAndCloths,
}

/// <param name="From">The first of a rest lies over it from coming out, whenever it was said.</param>
public readonly record struct RestCover(DateTimeOffset From, RestUnder Under)
{
    /// <summary>What lies over a joint at that moment of its rest.</summary>
    /// <param name="covers">In order of time, one at the least.</param>
    public static RestUnder At(IReadOnlyList<RestCover> covers, DateTimeOffset moment) =>
        covers.Where(cover => cover.From <= moment).DefaultIfEmpty(covers[0]).Last().Under;
}
