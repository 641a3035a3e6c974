namespace CookAlong.Intake.Recipes;

/// <summary>Finds every span of time in a text.</summary>
static class Times
{
    const double Day = 24 * 60;

    /// <summary>"Overnight" as cooks mean it; common practice, no source.</summary>
    static readonly (double Least, double Most) overnight = (8 * 60, 12 * 60);

    public static List<TimeRead> Read(List<Token> tokens)
    {
        var found = new List<TimeRead>();
        for (var at = 0; at < tokens.Count;)
        {
            if (Span(tokens, at) is var (least, most, next) && most is > 0 and <= 30 * Day)
            {
                var (role, end) = Role(tokens, at, next);
                found.Add(new TimeRead(least, most, role, tokens[at].At, tokens[end - 1].End - tokens[at].At));
                at = end;
            }
            else
            {
                at++;
            }
        }

        return found;
    }

    static (double Least, double Most, int Next)? Span(List<Token> tokens, int at)
    {
        if (tokens[at].Is("overnight"))
        {
            return (overnight.Least, overnight.Most, at + 1);
        }

        if (tokens[at].Is("over") && at + 1 < tokens.Count && tokens[at + 1].Is("night"))
        {
            return (overnight.Least, overnight.Most, at + 2);
        }

        if (Simple(tokens, at) is not var (least, most, unit, next))
        {
            return null;
        }

        // "1 hour 20 minutes", "an hour and 20 minutes", "one hour and a half", "20 minutes to half an hour".
        var then = next < tokens.Count && tokens[next].Is("and", ",", "&") ? next + 1 : next;
        if (unit > 1 && then < tokens.Count && Simple(tokens, then) is var (restLeast, restMost, smaller, after) && smaller < unit && restMost < unit)
        {
            return (least + restLeast, most + restMost, after);
        }

        if (unit > 1 && then > next && then < tokens.Count && tokens[then].Is("a", "one", "three", "half") && Quantity.One(tokens, then) is var (part, behind) && part < 1)
        {
            return (least + (part * unit), most + (part * unit), behind);
        }

        return next < tokens.Count && tokens[next].Is("to", "-", "or") && next + 1 < tokens.Count && Simple(tokens, next + 1) is var (_, longest, _, last) && longest > most
            ? (least, longest, last)
            : (least, most, next);
    }

    /// <summary>A quantity and one unit, in minutes; the unit's own minutes as well.</summary>
    static (double Least, double Most, double Unit, int Next)? Simple(List<Token> tokens, int at)
    {
        if (Unit(tokens, at + 1) is var (single, behind) && tokens[at].Is("a", "an", "one", "|", "l", "i"))
        {
            // The scan of an old page takes a 1 for a stroke.
            return (single, single, single, behind);
        }

        if (Quantity.Range(tokens, at) is not var (least, most, next))
        {
            return null;
        }

        // "15 more minutes", "half an hour", "three quarters of an hour", "an additional 15 minutes".
        while (next < tokens.Count && tokens[next].Is("more", "further", "additional", "extra", "of", "an", "a", "full", "good", "long"))
        {
            next++;
        }

        return Unit(tokens, next) is var (unit, after) ? (least * unit, most * unit, unit, after) : null;
    }

    static (double Minutes, int Next)? Unit(List<Token> tokens, int at)
    {
        var joined = at < tokens.Count && tokens[at].Is("-") ? at + 1 : at;
        if (joined >= tokens.Count)
        {
            return null;
        }

        var next = joined + 1;
        return tokens[joined].Text switch
        {
            "second" or "seconds" or "sec" or "secs" => (1 / 60.0, next),
            "minute" or "minutes" or "min" or "mins" => (1, next),
            "hour" or "hours" or "hr" or "hrs" => (60, next),
            "h" when joined == at => (60, next),
            "day" or "days" => (Day, next),
            "week" or "weeks" => (7 * Day, next),
            _ => null,
        };
    }

    /// <summary>What the words before and after make of it; and the end of those that belong to it.</summary>
    static (TimeRole Role, int Next) Role(List<Token> tokens, int at, int next)
    {
        bool Before(int back, params ReadOnlySpan<string> words) => at - back >= 0 && tokens[at - back].Is(words);

        if (next + 1 < tokens.Count && ((tokens[next].Is("per", "a", "each", "every") && Weight(tokens[next + 1]) is not null)
            || (next + 2 < tokens.Count && tokens[next].Is("to", "for", "of") && tokens[next + 1].Is("the", "each", "every", "a") && Weight(tokens[next + 2]) is not null)))
        {
            var weight = tokens[next].Is("to", "for", "of") ? next + 2 : next + 1;
            return (Weight(tokens[weight])!.Value, weight + 1);
        }

        // "Ten minutes before serving, add ..." begins its clause; "let stand ten minutes before slicing" takes ten minutes.
        if (next < tokens.Count && tokens[next].Is("before") && (at == 0 || Before(1, ".", ",", ";", "about") || (Before(1, "of") && Before(2, "."))))
        {
            return (TimeRole.Before, next);
        }

        return Before(1, "every", "each") || (Before(1, "about", "or") && Before(2, "every")) ? (TimeRole.Every, next)
            : Before(1, "after") || (Before(1, "about", "first") && Before(2, "after", "the")) && Before(3, "after") ? (TimeRole.After, next)
            : (Before(1, "of", ":", "is") && Before(2, "total", "time")) || Before(1, "total", "altogether") ? (TimeRole.Total, next)
            : tokens[next - 1].Text.StartsWith("sec", StringComparison.Ordinal) && IsAfterTemperature(tokens, at) ? (TimeRole.Dwell, next)
            : (TimeRole.Takes, next);
    }

    static TimeRole? Weight(Token token) => token.Text switch
    {
        "pound" or "pounds" or "lb" or "lbs" => TimeRole.PerPound,
        "kilo" or "kilos" or "kg" or "kilogram" or "kilogramme" => TimeRole.PerKilo,
        _ => null,
    };

    /// <summary>A temperature stands in the same sentence before it, at most eight words back.</summary>
    static bool IsAfterTemperature(List<Token> tokens, int at)
    {
        for (var back = at - 1; back >= Math.Max(0, at - 9); back--)
        {
            if (tokens[back].Is("f", "c", "°", "degrees") && back > 0)
            {
                return true;
            }
        }

        return false;
    }
}
