namespace CookAlong.Domain.Quantities;

/// <summary>Whose spoons, cups and pints a recipe means.</summary>
public enum SpoonSizes
{
    /// <summary>Teaspoon 5, tablespoon 15, cup 250 mL; a pint there is none of, and the British is taken.</summary>
    Metric,

    /// <summary>The British kitchen: spoons as metric, pints and fluid ounces imperial.</summary>
    UnitedKingdom,

    UnitedStates,

    /// <summary>As metric, but with a tablespoon of 20 mL.</summary>
    Australia,
}
