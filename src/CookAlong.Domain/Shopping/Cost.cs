namespace CookAlong.Domain.Shopping;

/// <summary>What was paid for the lines of a list that somebody wrote a price on; nobody has to.</summary>
/// <param name="Spent">The sum, in the household's currency.</param>
/// <param name="Unpriced">Lines that are bought and have no price yet.</param>
/// <param name="Currency">By ISO 4217; "" = plain numbers.</param>
public sealed record Cost(decimal Spent, int Unpriced, string Currency)
{
    /// <summary>The dearest line; more is a slip of the finger, also where a thousand is small money.</summary>
    public const decimal Most = 9_999_999.99m;

    /// <param name="lines">Of the lines on the list, their mark and price. What is in the cupboard costs nothing unless somebody says so.</param>
    /// <returns>Null while no line has a price.</returns>
    public static Cost? Of(IReadOnlyCollection<(Mark Mark, decimal? Price)> lines, string currency) =>
        lines.Any(line => line.Price is not null)
            ? new Cost(lines.Sum(line => line.Price ?? 0), lines.Count(line => line is { Mark: Mark.Bought, Price: null }), currency)
            : null;

    public static bool IsPrice(decimal price) => price is >= 0 and <= Most && decimal.Round(price, 2) == price;

    /// <summary>By its form: which codes are money changes with the world.</summary>
    public static bool IsCode(string code) => code.Length == 3 && code.All(char.IsAsciiLetterUpper);
}
