namespace CookAlong.Intake.Recipes;

/// <summary>A temperature as a recipe says it.</summary>
/// <param name="Least">Degrees Celsius, not rounded.</param>
/// <param name="Most">Degrees Celsius, at least <paramref name="Least"/>.</param>
/// <param name="Said">The number as it stands there, in its own unit; for words and gas marks the middle in Celsius.</param>
/// <param name="Unit">F, C, gas or words.</param>
/// <param name="IsFan">Said for a fan oven.</param>
/// <param name="At">Where the words stand in the text.</param>
public sealed record HeatRead(double Least, double Most, double Said, HeatUnit Unit, HeatKind Kind, bool IsFan, int At, int Length);

public enum HeatUnit
{
    Fahrenheit,
    Celsius,
    GasMark,
    Words,
}

public enum HeatKind
{
    Oven,

    /// <summary>Fat or oil to fry in.</summary>
    Fat,

    Griddle,

    /// <summary>The middle of the food.</summary>
    Core,

    /// <summary>Kept hot.</summary>
    Hold,

    /// <summary>Kept cold.</summary>
    Chill,

    Other,
}
