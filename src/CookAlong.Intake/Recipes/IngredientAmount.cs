using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>How much, at the head of an ingredient's line: "2 x 400 g tins", "1 cup plus 2 tbsp", "a knob", "half a dozen".</summary>
/// <param name="Unit">As written; null for pieces.</param>
/// <param name="Next">The token after it.</param>
readonly record struct IngredientAmount(decimal? Least, decimal? Most, string? Unit, int Next)
{
    /// <summary>Words that say how full a spoon is, or that nobody measures: they belong to the amount and change no number.</summary>
    static readonly string[] vague = ["about", "approximately", "approx", "around", "roughly", "scant", "heaped", "heaping", "generous", "good", "level", "rounded", "small", "large", "big"];

    const decimal Largest = 1_000_000;

    /// <summary>Null when the line does not begin with one.</summary>
    public static IngredientAmount? At(List<Token> tokens, int from, SpoonSizes spoons)
    {
        var at = SkipVague(tokens, from, onlyBeforeNumber: true, spoons);
        if (at < tokens.Count && tokens[at].Is("some"))
        {
            return new(null, null, null, at + 1);
        }

        if (at + 1 < tokens.Count && tokens[at].Is("a") && tokens[at + 1].Is("few", "little", "bit"))
        {
            return new(null, null, null, at + 2);
        }

        if (Quantity.Range(tokens, at) is not var (least, most, next))
        {
            // "a knob of butter", "an onion".
            if (at >= tokens.Count || !tokens[at].Is("a", "an"))
            {
                return null;
            }

            (least, most, next) = (1, 1, at + 1);
        }

        if (!IsSound(least) || !IsSound(most))
        {
            return null;
        }

        if (next < tokens.Count && tokens[next].Is("a", "an"))
        {
            // "half a lemon".
            next++;
        }

        return Packs(tokens, next, least, most, spoons) ?? WithUnit(tokens, next, (decimal)least, (decimal)most, spoons);
    }

    /// <summary>"2 x 400 g tins", "1 (400 g) tin", "2 400 g tins": so many of so much each.</summary>
    static IngredientAmount? Packs(List<Token> tokens, int at, double least, double most, SpoonSizes spoons)
    {
        var isTimes = at < tokens.Count && tokens[at].Is("x", "×", "*");
        var isBracket = at < tokens.Count && tokens[at].Is("(");
        var number = isTimes || isBracket ? at + 1 : at;
        if (Quantity.One(tokens, number) is not var (each, afterEach) || !IsSound(each) || UnitAt(tokens, afterEach, spoons) is not var (unit, next) || unit.Dimension is not (Dimension.Mass or Dimension.Volume))
        {
            return null;
        }

        if (isBracket && (next >= tokens.Count || !tokens[next++].Is(")")))
        {
            return null;
        }

        // Without the sign or a container behind it, the second amount is something else: "1 (250 g) onion" is an aside.
        var container = UnitAt(tokens, next, spoons);
        if (!isTimes && container is not { Unit.Dimension: Dimension.Own })
        {
            return null;
        }

        return new((decimal)least * (decimal)each, (decimal)most * (decimal)each, unit.Name, container is { Unit.Dimension: Dimension.Own } one && HasMore(tokens, one.Next) ? one.Next : next);
    }

    static IngredientAmount WithUnit(List<Token> tokens, int at, decimal least, decimal most, SpoonSizes spoons)
    {
        var from = SkipVague(tokens, at, onlyBeforeNumber: false, spoons);
        if (UnitAt(tokens, from, spoons) is not var (unit, next) || (unit.Dimension == Dimension.Own && !HasMore(tokens, next)))
        {
            // "2 large onions": the size is the name's.
            return new(Rounded(least), Rounded(most), null, at);
        }

        // "1 cup plus 2 tbsp".
        if (next < tokens.Count && tokens[next].Is("plus", "and", "+") && Quantity.One(tokens, next + 1) is var (more, afterMore) && IsSound(more)
            && UnitAt(tokens, afterMore, spoons) is var (second, end) && second.Dimension == unit.Dimension && unit.Dimension is Dimension.Mass or Dimension.Volume)
        {
            var added = new Amount((decimal)more, second).In(unit).Value;
            (least, most, next) = (least + added, most + added, end);
        }

        return new(Rounded(least), Rounded(most), unit.Dimension == Dimension.Own ? tokens[from].Text : unit.Name, next);
    }

    static (Unit Unit, int Next)? UnitAt(List<Token> tokens, int at, SpoonSizes spoons)
    {
        // "2 T-bone steaks" are no spoons.
        if (at >= tokens.Count || tokens[at].Value is not null || (tokens[at].Is("T", "t") && at + 1 < tokens.Count && tokens[at + 1].Is("-")))
        {
            return null;
        }

        if (tokens[at].Is("fl", "fluid"))
        {
            var ounce = at + 1 < tokens.Count && tokens[at + 1].Is(".") ? at + 2 : at + 1;
            return ounce < tokens.Count && tokens[ounce].Is("oz", "ounce", "ounces") ? (Units.Find("fl oz", spoons)!, AfterStop(tokens, ounce)) : null;
        }

        return Units.Find(tokens[at].Text, spoons) is { } unit ? (unit, AfterStop(tokens, at)) : null;
    }

    static int AfterStop(List<Token> tokens, int at) => at + 1 < tokens.Count && tokens[at + 1].Is(".") ? at + 2 : at + 1;

    /// <summary>"6 cloves" are the spice: a natural part is a unit only of something.</summary>
    static bool HasMore(List<Token> tokens, int at) => at < tokens.Count && !tokens[at].Is(",", "(", ";", "or", "and");

    static int SkipVague(List<Token> tokens, int at, bool onlyBeforeNumber, SpoonSizes spoons)
    {
        var next = at;
        while (next < tokens.Count && (tokens[next].Is(vague) || (next > at && tokens[next].Is("."))))
        {
            next++;
        }

        return next == at ? at
            : onlyBeforeNumber ? (next < tokens.Count && (tokens[next].Value is not null || tokens[next].Is("a", "an")) ? next : at)
            : UnitAt(tokens, next, spoons) is null ? at : next;
    }

    static bool IsSound(double value) => value is >= 0.0001 and < (double)Largest;

    static decimal Rounded(decimal value) => Math.Round(value, 4);
}
