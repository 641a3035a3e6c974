namespace CookAlong.Intake.Recipes;

/// <summary>What a recipe was read from.</summary>
public enum RecipeForm
{
    PlainText,

    /// <summary>A page or data that marks a recipe as schema.org has it.</summary>
    Marked,

    /// <summary>A page that marks none; its words were read.</summary>
    UnmarkedPage,

    /// <summary>Data (JSON) without a recipe in it; nothing was read.</summary>
    OtherData,
}
