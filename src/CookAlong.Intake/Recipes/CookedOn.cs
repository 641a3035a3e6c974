namespace CookAlong.Intake.Recipes;

/// <summary>What a step of a recipe takes place on or in.</summary>
public enum CookedOn
{
    Nothing,
    Oven,
    Ring,
    Grill,
    Fridge,
}

/// <summary>Tells what a step uses, by the verb that heats or cools, nearest before a time where there is one.</summary>
static class CookedOnWords
{
    static readonly Dictionary<string, CookedOn> all = Words();

    static readonly Dictionary<CookedOn, string[]> places = new()
    {
        [CookedOn.Oven] = ["oven"],
        [CookedOn.Ring] = ["hob", "stove", "ring", "burner", "griddle", "saucepan", "skillet", "stockpot", "kettle", "pan"],
        [CookedOn.Grill] = ["grill", "broiler"],
        [CookedOn.Fridge] = ["fridge", "refrigerator", "refrigerate", "refrigerated", "refrigeration"],
    };

    /// <param name="near">The token of a span of time; null for the step as a whole.</param>
    public static CookedOn Of(string text, List<Token> tokens, int? near)
    {
        if (near is not { } at)
        {
            return tokens.Select((_, i) => At(tokens, i)).FirstOrDefault(found => found is not null) ?? CookedOn.Nothing;
        }

        // In its own sentence first, the last word before it, unless that only cooks and the oven is named behind; then what was
        // said after it; then the sentences before.
        var (from, to) = Sentences.Around(text, tokens, at);
        var before = Last(tokens, from, at);
        return before == CookedOn.Ring && tokens[Math.Min(at, to)..to].Any(token => token.Is("oven")) ? CookedOn.Oven
            : before ?? First(tokens, at, to) ?? Last(tokens, 0, from) ?? CookedOn.Nothing;
    }

    /// <summary>Whether the words name the place itself, or a way of cooking that usually has it.</summary>
    public static Sureness Says(string text, CookedOn on)
    {
        var tokens = Token.Read(text);
        return tokens.Any(token => places.GetValueOrDefault(on, []).Contains(token.Text)) ? Sureness.Read
            : tokens.Select((_, i) => At(tokens, i)).Any(found => found == on) ? Sureness.Usual
            : Sureness.Guessed;
    }

    static CookedOn? Last(List<Token> tokens, int from, int to)
    {
        for (var i = to - 1; i >= from; i--)
        {
            if (At(tokens, i) is { } found)
            {
                return found;
            }
        }

        return null;
    }

    static CookedOn? First(List<Token> tokens, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            if (At(tokens, i) is { } found)
            {
                return found;
            }
        }

        return null;
    }

    static CookedOn? At(List<Token> tokens, int at)
    {
        // "Stir-cook" is one word of cooking; a "cool oven" is an oven.
        var isJoined = at + 1 < tokens.Count && tokens[at + 1].Is("-", "oven");
        return tokens[at].Is("stand", "rest", "cool", "beat", "whip", "knead", "soak", "soaked", "rise", "prove") && !isJoined ? CookedOn.Nothing
            : all.TryGetValue(tokens[at].Text, out var uses) ? uses : null;
    }

    static Dictionary<string, CookedOn> Words()
    {
        var words = new Dictionary<string, CookedOn>(StringComparer.Ordinal);
        Add(CookedOn.Oven, "oven", "bake", "baked", "baking", "roast", "roasted", "roasting");
        Add(CookedOn.Grill, "grill", "grilled", "broil", "broiled", "broiler");
        Add(CookedOn.Fridge, "refrigerate", "refrigerated", "refrigerator", "refrigeration", "fridge", "chill", "chilled", "ice");
        Add(CookedOn.Ring, "simmer", "simmered", "simmering", "boil", "boiled", "boiling", "fry", "fried", "saute", "sauté", "sautéed", "poach", "poached", "steam", "steamed", "scald", "scalded",
            "blanch", "braise", "stew", "stewed", "sear", "cook", "cooked", "melt", "saucepan", "skillet", "stockpot", "kettle", "griddle", "hob", "stove", "parboil", "heat", "soften", "sweat", "wilt", "caramelise");
        return words;

        void Add(CookedOn uses, params string[] all)
        {
            foreach (var word in all)
            {
                words[word] = uses;
            }
        }
    }
}
