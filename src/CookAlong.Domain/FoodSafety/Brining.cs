namespace CookAlong.Domain.FoodSafety;

/// <summary>Laying meat in salt water, in the fridge all the time.</summary>
public static class Brining
{
    /// <summary>At least overnight, which is taken for ten hours (common practice, no source), at the most two days.</summary>
    public static TimeLimit InTheFridge { get; } = new("us-brine", TimeSpan.FromHours(10), TimeSpan.FromDays(2), new("USDA Meat and Poultry Hotline", "Brined turkey, a talk", null, "3/4 cup of table salt to a gallon of water; in the refrigerator at least overnight, up to two days"));

    /// <summary>Grams of table salt a litre: 3/4 of a cup of 292 g (USDA SR28) to 3.785 litres.</summary>
    public const double GramsALitre = 58;
}
