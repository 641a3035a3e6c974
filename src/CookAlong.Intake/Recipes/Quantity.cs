namespace CookAlong.Intake.Recipes;

/// <summary>Reads "2-1/2", "10 to 15", "one and a half", "half", "twenty-five", "from ten to fifteen".</summary>
static class Quantity
{
    static readonly Dictionary<string, int> small = new(StringComparer.Ordinal)
    {
        ["one"] = 1,
        ["two"] = 2,
        ["three"] = 3,
        ["four"] = 4,
        ["five"] = 5,
        ["six"] = 6,
        ["seven"] = 7,
        ["eight"] = 8,
        ["nine"] = 9,
        ["ten"] = 10,
        ["eleven"] = 11,
        ["twelve"] = 12,
        ["thirteen"] = 13,
        ["fourteen"] = 14,
        ["fifteen"] = 15,
        ["sixteen"] = 16,
        ["seventeen"] = 17,
        ["eighteen"] = 18,
        ["nineteen"] = 19,
    };

    static readonly Dictionary<string, int> tens = new(StringComparer.Ordinal)
    {
        ["twenty"] = 20,
        ["thirty"] = 30,
        ["forty"] = 40,
        ["fifty"] = 50,
        ["sixty"] = 60,
        ["seventy"] = 70,
        ["eighty"] = 80,
        ["ninety"] = 90,
    };

    static readonly Dictionary<string, double> parts = new(StringComparer.Ordinal)
    {
        ["half"] = 0.5,
        ["third"] = 1 / 3.0,
        ["thirds"] = 1 / 3.0,
        ["quarter"] = 0.25,
        ["quarters"] = 0.25,
        ["fourth"] = 0.25,
        ["fourths"] = 0.25,
        ["eighth"] = 0.125,
    };

    /// <summary>A number or a range at this place, and the place after it; null when there is none.</summary>
    public static (double Least, double Most, int Next)? Range(List<Token> tokens, int at)
    {
        if (One(tokens, at) is not var (least, next))
        {
            return null;
        }

        return next < tokens.Count && tokens[next].Is("-", "to", "or", "and") && One(tokens, next + 1) is var (most, after) && most > least
            && (!tokens[next].Is("and") || (at > 0 && tokens[at - 1].Is("between")))
            ? (least, most, after)
            : (least, least, next);
    }

    /// <summary>One number, its fraction included.</summary>
    public static (double Value, int Next)? One(List<Token> tokens, int at)
    {
        if (at >= tokens.Count)
        {
            return null;
        }

        if (tokens[at].Value is { } value)
        {
            var next = at + 1;
            if (tokens[at].IsFraction)
            {
                return (value, next);
            }

            // "1 1/2", "1-1/2", "1½", "2 and a half".
            var part = next < tokens.Count && tokens[next].Is("-") && next + 1 < tokens.Count && tokens[next + 1] is { IsFraction: true, Value: < 1 } ? next + 1 : next;
            return part < tokens.Count && tokens[part] is { IsFraction: true, Value: < 1 and var fraction } ? (value + fraction, part + 1) : AndPart(tokens, value, next);
        }

        if (Part(tokens, at) is { } only)
        {
            return only;
        }

        if (tens.TryGetValue(tokens[at].Text, out var ten))
        {
            var next = at + 1;
            var one = next < tokens.Count && tokens[next].Is("-") ? next + 1 : next;
            return one < tokens.Count && small.TryGetValue(tokens[one].Text, out var more) && more < 10 ? AndPart(tokens, ten + more, one + 1) : AndPart(tokens, ten, next);
        }

        return small.TryGetValue(tokens[at].Text, out var few) ? AndPart(tokens, few, at + 1) : null;
    }

    /// <summary>"one-half", "three quarters", "half", "a quarter": only the part.</summary>
    static (double Value, int Next)? Part(List<Token> tokens, int at)
    {
        if (parts.TryGetValue(tokens[at].Text, out var alone) && tokens[at].Is("half", "quarter"))
        {
            return (alone, at + 1);
        }

        var (times, next) = tokens[at].Is("a", "an") ? (1, at + 1) : small.TryGetValue(tokens[at].Text, out var count) && count < 8 ? (count, at + 1) : (0, at);
        if (times > 0 && next < tokens.Count && tokens[next].Is("-"))
        {
            next++;
        }

        return times > 0 && next < tokens.Count && parts.TryGetValue(tokens[next].Text, out var part) ? (times * part, next + 1) : null;
    }

    static (double Value, int Next) AndPart(List<Token> tokens, double whole, int at) =>
        at + 1 < tokens.Count && tokens[at].Is("and", "&") && Part(tokens, at + 1) is var (part, next) && part < 1 ? (whole + part, next) : (whole, at);
}
