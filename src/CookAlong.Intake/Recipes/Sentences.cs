namespace CookAlong.Intake.Recipes;

/// <summary>Where a sentence begins and ends. A full stop after an abbreviation ("325 F. oven") ends none.</summary>
static class Sentences
{
    /// <summary>First token of the sentence around this one, and the place after its last.</summary>
    public static (int From, int To) Around(string text, List<Token> tokens, int at)
    {
        var from = at;
        while (from > 0 && !Ends(text, tokens, from - 1))
        {
            from--;
        }

        var to = at;
        while (to < tokens.Count && !Ends(text, tokens, to))
        {
            to++;
        }

        return (from, Math.Min(to + 1, tokens.Count));
    }

    static bool Ends(string text, List<Token> tokens, int at) =>
        tokens[at].Is(";", "!", "?")
        || (tokens[at].Is(".") && (at + 1 == tokens.Count || char.IsUpper(text[tokens[at + 1].At])));
}
