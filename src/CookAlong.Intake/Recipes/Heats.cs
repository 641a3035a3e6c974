using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>Finds every temperature in a text, and what it is the temperature of.</summary>
static class Heats
{
    /// <summary>Ovens of old books, in °C (home economics tables of the 1930s, from memory); the longer name first.</summary>
    static readonly (string[] Words, int Least, int Most)[] named =
    [
        (["very", "slow"], 120, 135), (["very", "cool"], 110, 125), (["very", "hot"], 230, 260), (["moderately", "slow"], 160, 170), (["moderately", "hot"], 190, 205),
        (["slow"], 145, 165), (["cool"], 135, 150), (["moderate"], 175, 190), (["quick"], 205, 230), (["hot"], 205, 230),
    ];

    public static List<HeatRead> Read(string text, List<Token> tokens)
    {
        var found = new List<HeatRead>();
        var (from, to, words) = (0, 0, new HashSet<string>());
        for (var at = 0; at < tokens.Count;)
        {
            if (One(tokens, at) is not { } one)
            {
                at++;
                continue;
            }

            if (at >= to)
            {
                // One sentence may have many temperatures; it is gone through once.
                (from, to) = Sentences.Around(text, tokens, at);
                words = [.. tokens[from..to].Select(token => token.Text)];
            }

            var said = Alternatives(tokens, one.Next, out var next, out var isFan);
            found.Add(new HeatRead(
                one.Least, one.Most, one.Said, one.Unit, KindOf(tokens, next, words, one.Most, one.Unit), isFan && !said, tokens[at].At, tokens[next - 1].End - tokens[at].At));
            at = next;
        }

        return found;
    }

    static Found? One(List<Token> tokens, int at)
    {
        if (Named(tokens, at) is { } word)
        {
            return word;
        }

        if (GasMark(tokens, at) is { } mark)
        {
            return mark;
        }

        if (Quantity.Range(tokens, at) is not var (least, most, next) || tokens[at].Value is null)
        {
            return null;
        }

        var hasDegrees = next < tokens.Count && tokens[next].Is("°", "degrees", "degree", "deg");
        next += hasDegrees ? 1 : 0;
        var unit = next >= tokens.Count ? (HeatUnit?)null
            : tokens[next].Is("f", "fahrenheit") ? HeatUnit.Fahrenheit
            : tokens[next].Is("c", "celsius", "centigrade") ? HeatUnit.Celsius
            : null;
        if (unit is null)
        {
            // "Bake at 350 degrees": above what any Celsius oven does, it can only be the other.
            return hasDegrees && most <= 600 ? new Found(Celsius(least, least > 280), Celsius(most, least > 280), least, least > 280 ? HeatUnit.Fahrenheit : HeatUnit.Celsius, next) : null;
        }

        if (!hasDegrees && most < 25)
        {
            // "2 C flour": cups.
            return null;
        }

        var isFahrenheit = unit == HeatUnit.Fahrenheit;
        return most > (isFahrenheit ? 1000 : 550) ? null : new Found(Celsius(least, isFahrenheit), Celsius(most, isFahrenheit), least, unit.Value, next + 1);
    }

    static double Celsius(double value, bool isFahrenheit) => isFahrenheit ? OvenScale.Celsius(value) : value;

    static Found? Named(List<Token> tokens, int at)
    {
        foreach (var (words, least, most) in named)
        {
            if (at + words.Length < tokens.Count && words.Select((word, i) => tokens[at + i].Is(word)).All(same => same) && tokens[at + words.Length].Is("oven")
                && (at == 0 || !tokens[at - 1].Is("very", "moderately")))
            {
                return new Found(least, most, (least + most) / 2.0, HeatUnit.Words, at + words.Length + 1);
            }
        }

        return null;
    }

    static Found? GasMark(List<Token> tokens, int at)
    {
        if (!tokens[at].Is("gas"))
        {
            return null;
        }

        var number = at + 1 < tokens.Count && tokens[at + 1].Is("mark") ? at + 2 : at + 1;
        return number < tokens.Count && tokens[number].Value is { } mark && OvenScale.CelsiusOfGas(mark) is { } celsius
            ? new Found(celsius, celsius, celsius, HeatUnit.GasMark, number + 1)
            : null;
    }

    /// <summary>"180 °C/160 °C fan/gas 4", "350 °F (180 °C)": the same heat said again, which is no second one.</summary>
    /// <returns>Whether another was said.</returns>
    static bool Alternatives(List<Token> tokens, int at, out int next, out bool isFan)
    {
        next = at;
        isFan = Fan(tokens, ref next);
        var isAny = false;
        while (next + 1 < tokens.Count && tokens[next].Is("/", "(", ",", ";") && One(tokens, next + 1) is { } again)
        {
            isAny = true;
            next = again.Next;
            Fan(tokens, ref next);
            next += next < tokens.Count && tokens[next].Is(")") ? 1 : 0;
        }

        return isAny && !isFan;
    }

    static bool Fan(List<Token> tokens, ref int next)
    {
        if (next >= tokens.Count || !tokens[next].Is("fan"))
        {
            return false;
        }

        next++;
        return true;
    }

    static HeatKind KindOf(List<Token> tokens, int next, HashSet<string> sentence, double celsius, HeatUnit unit)
    {
        bool Says(params string[] words) => sentence.Overlaps(words);

        var isOrLower = next + 1 < tokens.Count && tokens[next].Is("or") && tokens[next + 1].Is("lower", "below", "less");
        return unit is HeatUnit.Words or HeatUnit.GasMark ? HeatKind.Oven
            : celsius < 15 && (isOrLower || Says("refrigeration", "refrigerate", "refrigerator", "fridge", "chill", "chilled", "cold")) ? HeatKind.Chill
            : Says("internal", "core", "thermometer", "centre", "center", "thickest") ? HeatKind.Core
            : Says("hold", "holding") || (Says("keep") && Says("warm", "hot") && celsius < 110) ? HeatKind.Hold
            : celsius < 100 && (Says("second", "seconds") || Says("reaches", "reach", "registers")) ? HeatKind.Core
            : Says("griddle") ? HeatKind.Griddle
            : Says("oven", "bake", "baked", "baking", "roast", "roasted", "roasting", "preheat") ? HeatKind.Oven
            : celsius is >= 130 and <= 210 && Says("fat", "oil", "deep", "fry", "fryer", "lard") ? HeatKind.Fat
            : celsius >= 90 ? HeatKind.Oven
            : HeatKind.Other;
    }

    sealed record Found(double Least, double Most, double Said, HeatUnit Unit, int Next);
}
