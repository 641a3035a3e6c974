using System.Collections.Immutable;
using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>Gives every word of an ingredient's line its part. One pass over the words, so the time is linear in the line.</summary>
static class IngredientLine
{
    /// <summary>Words before an "or" that only say which kind: "red or white wine vinegar" is one thing.</summary>
    static readonly string[] kinds = ["red", "white", "green", "black", "brown", "yellow", "dark", "light", "plain", "fresh", "dried", "salted", "unsalted", "large", "small", "medium", "vegetable", "chicken", "beef", "fish", "flat", "curly", "whole", "ground", "hot", "mild", "sweet", "full"];

    static readonly string[] manners = ["finely", "coarsely", "roughly", "thinly", "thickly", "freshly", "lightly", "well", "very"];

    public static IngredientRead Read(string line, SpoonSizes spoons)
    {
        var text = line.Trim();
        if (text.Length > IngredientRead.Longest)
        {
            return new(line, null, null, null, text, null, [], [], [new(IngredientPart.Name, 0, line.Length)]);
        }

        var tokens = Token.Read(text);
        var parts = new IngredientPart[tokens.Count];
        var start = Leading(tokens, parts, spoons);
        var amount = IngredientAmount.At(tokens, start, spoons);
        var at = amount?.Next ?? start;
        parts.AsSpan(start, at - start).Fill(IngredientPart.Amount);
        Rest(tokens, parts, at);
        if (!parts.Contains(IngredientPart.Name))
        {
            // "2 tbsp", "(optional)": nothing says of what, so the whole line is the name, and no number is believed.
            return new(line, null, null, null, text, null, [], [], [new(IngredientPart.Name, line.Length - line.TrimStart().Length, text.Length)]);
        }

        var indent = line.Length - line.TrimStart().Length;
        var pieces = Pieces(tokens, parts);
        string[] Of(IngredientPart part) => [.. pieces.Where(piece => piece.Part == part).Select(piece => text.Substring(piece.At, piece.Length))];
        return new(
            line, amount?.Least, amount?.Most, amount?.Unit,
            string.Join(' ', Of(IngredientPart.Name)),
            Of(IngredientPart.Preparation) is { Length: > 0 } preparation ? string.Join(", ", preparation) : null,
            [.. Of(IngredientPart.Alternative)], [.. Of(IngredientPart.Unread)],
            [.. pieces.Select(piece => piece with { At = piece.At + indent })]);
    }

    /// <summary>Bullets, and "juice of", "grated zest of" before an amount: how it is wanted, said first.</summary>
    static int Leading(List<Token> tokens, IngredientPart[] parts, SpoonSizes spoons)
    {
        var at = 0;
        while (at < tokens.Count && tokens[at].Is("-", "*", "•", "·", "+"))
        {
            parts[at++] = IngredientPart.Joint;
        }

        for (var of = at + 1; of < Math.Min(tokens.Count, at + 6); of++)
        {
            if (tokens[of].Is("of") && tokens[of - 1].Is("juice", "zest", "rind", "peel") && IngredientAmount.At(tokens, of + 1, spoons) is not null)
            {
                parts.AsSpan(at, of - at).Fill(IngredientPart.Preparation);
                parts[of] = IngredientPart.Joint;
                return of + 1;
            }
        }

        return at;
    }

    static void Rest(List<Token> tokens, IngredientPart[] parts, int from)
    {
        var (part, depth, nameFrom) = (IngredientPart.Name, 0, from);
        for (var at = from; at < tokens.Count; at++)
        {
            var token = tokens[at];
            if (token.Is("(", "[") || depth > 0)
            {
                // In brackets stand asides of every kind, and in them other brackets.
                depth += token.Is("(", "[") ? 1 : token.Is(")", "]") ? -1 : 0;
                parts[at] = token.Is("(", "[", ")", "]") ? IngredientPart.Joint : IngredientPart.Unread;
            }
            else if (at == from && token.Is("of", "."))
            {
                (parts[at], from, nameFrom) = (IngredientPart.Joint, from + 1, at + 1);
            }
            else if (token.Is(",", ";", ":") || (token.Is("-") && IsApart(tokens, at)))
            {
                parts[at] = IngredientPart.Joint;
                part = at > nameFrom ? IngredientPart.Preparation : part;
            }
            else if (token.Is("or") && part is IngredientPart.Name or IngredientPart.Alternative && at > nameFrom && at + 1 < tokens.Count && !(part == IngredientPart.Name && at - nameFrom == 1 && tokens[nameFrom].Is(kinds)))
            {
                (parts[at], part) = (IngredientPart.Joint, IngredientPart.Alternative);
            }
            else if (part == IngredientPart.Name && at > nameFrom && EndsName(tokens, at))
            {
                parts[at] = part = IngredientPart.Preparation;
            }
            else if (part == IngredientPart.Name && at == nameFrom && token.Is(manners) && at + 2 < tokens.Count && !tokens[at + 2].Is(",", "(", ";"))
            {
                // "finely chopped parsley".
                (parts[at], parts[at + 1], nameFrom) = (IngredientPart.Preparation, IngredientPart.Preparation, at + 2);
                at++;
            }
            else
            {
                parts[at] = part;
            }
        }
    }

    /// <summary>"salt to taste", "oil for frying", "butter at room temperature".</summary>
    static bool EndsName(List<Token> tokens, int at) => at + 1 < tokens.Count
        && ((tokens[at].Is("to") && tokens[at + 1].Is("taste", "serve", "garnish", "finish", "decorate", "grease", "dust"))
            || (tokens[at].Is("for") && tokens[at + 1].Text.EndsWith("ing", StringComparison.Ordinal))
            || (tokens[at].Is("as") && tokens[at + 1].Is("needed", "required"))
            || (tokens[at].Is("at") && tokens[at + 1].Is("room")));

    /// <summary>A dash between spaces parts two thoughts; one inside a word does not.</summary>
    static bool IsApart(List<Token> tokens, int at) => at > 0 && at + 1 < tokens.Count && tokens[at - 1].End < tokens[at].At && tokens[at].End < tokens[at + 1].At;

    /// <summary>Runs of words of one part.</summary>
    static List<IngredientPiece> Pieces(List<Token> tokens, IngredientPart[] parts)
    {
        var pieces = new List<IngredientPiece>();
        for (var at = 0; at < tokens.Count;)
        {
            var end = at + 1;
            while (end < tokens.Count && parts[end] == parts[at])
            {
                end++;
            }

            pieces.Add(new(parts[at], tokens[at].At, tokens[end - 1].End - tokens[at].At));
            at = end;
        }

        return pieces;
    }
}
