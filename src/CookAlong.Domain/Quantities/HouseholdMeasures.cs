using System.Collections.Frozen;
using System.Globalization;

namespace CookAlong.Domain.Quantities;

/// <summary>What a food's measure weighs.</summary>
/// <param name="GramsPerMillilitre">Of a level measure; null where nobody weighed one.</param>
/// <param name="GramsPerPiece">Of a medium one, its edible part; null where nobody weighed one.</param>
/// <param name="Source">The food's number in USDA SR28.</param>
public sealed record HouseholdMeasure(string Food, decimal? GramsPerMillilitre, decimal? GramsPerPiece, string Source);

/// <summary>Weights of household measures by food: USDA National Nutrient Database SR28, in household-measures.csv.</summary>
public static class HouseholdMeasures
{
    static readonly FrozenDictionary<string, HouseholdMeasure> foods = Read();

    public static IReadOnlyCollection<HouseholdMeasure> All => foods.Values;

    /// <summary>
    /// The food of this name, or of its last words: "floury potatoes" is potato, "coarse salt" salt. Null when nobody weighed it.
    /// The words after a comma say how it comes, and count only where the table has them.
    /// </summary>
    public static HouseholdMeasure? Find(string name)
    {
        if (foods.GetValueOrDefault(FoodNames.Key(name)) is { } exact)
        {
            return exact;
        }

        var words = FoodNames.Words(FoodNames.Head(name));
        for (var from = 0; from < words.Length; from++)
        {
            if (foods.GetValueOrDefault(string.Join(' ', words[from..])) is { } found && !IsAnotherFood(words, from))
            {
                return found;
            }
        }

        return null;
    }

    /// <summary>"oat milk" is no milk, "cocoa butter" no butter: where a food stands before, it is another thing.</summary>
    static bool IsAnotherFood(string[] words, int from) => words[..from].Any(word => foods.ContainsKey(word) || word is "oat" or "soya" or "soy" or "coconut" or "nut" or "almond" or "rice");

    static FrozenDictionary<string, HouseholdMeasure> Read()
    {
        using var file = new StreamReader(typeof(HouseholdMeasures).Assembly.GetManifestResourceStream("household-measures.csv")!);
        var read = new Dictionary<string, HouseholdMeasure>(StringComparer.Ordinal);
        while (file.ReadLine() is { } line)
        {
            if (line.StartsWith('#'))
            {
                continue;
            }

            var cells = line.Split(',');
            read[FoodNames.Key(cells[0])] = new HouseholdMeasure(cells[0], Number(cells[1]), Number(cells[2]), cells[5]);
        }

        return read.ToFrozenDictionary(StringComparer.Ordinal);
    }

    static decimal? Number(string cell) => cell.Length == 0 ? null : decimal.Parse(cell, CultureInfo.InvariantCulture);
}
