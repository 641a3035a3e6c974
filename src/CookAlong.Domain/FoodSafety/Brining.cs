namespace CookAlong.Domain.FoodSafety;

/// <summary>A wet brine for poultry, in the fridge all the time.</summary>
public static class Brining
{
    /// <summary>At least overnight, at the most two days.</summary>
    public static Source Source { get; } = new("USDA Meat and Poultry Hotline", "Brined turkey, a talk", null, "3/4 cup of table salt to a gallon of water; in the refrigerator at least overnight, up to two days");

    /// <summary>Overnight; common practice, no source.</summary>
    public static readonly TimeSpan Least = TimeSpan.FromHours(10);

    public static readonly TimeSpan Most = TimeSpan.FromDays(2);

    /// <summary>Grams of table salt a litre: 3/4 of a cup of 292 g (USDA SR28) to 3.785 litres.</summary>
    public const double GramsALitre = 58;
}
