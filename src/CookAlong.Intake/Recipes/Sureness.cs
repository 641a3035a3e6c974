namespace CookAlong.Intake.Recipes;

/// <summary>How sure a thing is that was read from a recipe.</summary>
public enum Sureness
{
    /// <summary>Words say it: "180 °C", "20 minutes", "in the oven".</summary>
    Read,

    /// <summary>Words say it as cooks do, and a usual value was taken: a "moderate oven", "overnight", what is simmered stands on a ring.</summary>
    Usual,

    /// <summary>Nothing says it.</summary>
    Guessed,

    /// <summary>A person said otherwise.</summary>
    Corrected,
}
