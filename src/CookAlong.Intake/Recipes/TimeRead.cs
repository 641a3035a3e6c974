namespace CookAlong.Intake.Recipes;

/// <summary>A span of time as a recipe says it.</summary>
/// <param name="Least">Minutes.</param>
/// <param name="Most">Minutes, at least <paramref name="Least"/>.</param>
/// <param name="At">Where the words stand in the text.</param>
/// <param name="Length">Characters.</param>
public sealed record TimeRead(double Least, double Most, TimeRole Role, int At, int Length);

public enum TimeRole
{
    /// <summary>The food or the hands take this long.</summary>
    Takes,

    /// <summary>The sum of what was said before: "for a total of 40 minutes".</summary>
    Total,

    /// <summary>A temperature is to be held: "165 F. for 15 seconds".</summary>
    Dwell,

    /// <summary>"Every 15 minutes."</summary>
    Every,

    /// <summary>"After 20 minutes, turn."</summary>
    After,

    /// <summary>"10 minutes before serving."</summary>
    Before,

    /// <summary>"20 minutes to the pound."</summary>
    PerPound,

    PerKilo,
}
