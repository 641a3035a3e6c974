namespace CookAlong.Domain.Quantities;

/// <summary>Tells an amount of a food in grams, and grams in a measure.</summary>
public static class Weighing
{
    /// <summary>Null when the food's measure was never weighed.</summary>
    public static decimal? Grams(Amount amount, string food) => amount.Unit.Dimension switch
    {
        Dimension.Mass => amount.Base,
        Dimension.Volume => HouseholdMeasures.Find(food)?.GramsPerMillilitre * amount.Base,
        Dimension.Count => HouseholdMeasures.Find(food)?.GramsPerPiece * amount.Base,
        Dimension.Own when amount.Unit.Name is "clove" or "piece" or "head" or "stalk" => HouseholdMeasures.Find(food)?.GramsPerPiece * amount.Value,
        Dimension.Own or Dimension.Length => null,
        _ => throw new System.Diagnostics.UnreachableException($"An amount of something unknown: {amount.Unit.Dimension}."),
    };

    /// <summary>So many grams of a food in that unit; null when its measure was never weighed.</summary>
    public static Amount? Of(decimal grams, string food, Unit unit) =>
        Grams(new Amount(1, unit), food) is { } one ? new Amount(grams / one, unit) : null;
}
