using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Quantities;

/// <summary>A dish for more or fewer people than it was written for.</summary>
public static class Scaling
{
    /// <summary>How much of everything: 1 = as written.</summary>
    public static decimal Factor(Dish dish, decimal portions) => portions / dish.Serves;

    /// <summary>
    /// What does not grow with the dish, so that the cook thinks of it. Nothing below a third more or less. Common practice, no source.
    /// </summary>
    public static IEnumerable<ScalingCaution> Cautions(Dish dish, decimal factor)
    {
        if (factor is > 0.75m and < 1.34m)
        {
            yield break;
        }

        var ways = dish.Steps.Select(step => step.Way).ToList();
        if (ways.Any(way => way.Uses.Oven is not null))
        {
            yield return ScalingCaution.OvenTime;
        }

        if (ways.Any(way => way.Uses.Rings > 0))
        {
            yield return ScalingCaution.PanAndLiquid;
        }

        if (dish.Ingredients.Any(ingredient => FoodNames.Words(ingredient.Name).Any(word => word is "salt" or "pepper" or "chilli" or "clove" or "nutmeg" or "cayenne")))
        {
            yield return ScalingCaution.Seasoning;
        }

        if (dish.Ingredients.Any(ingredient => FoodNames.Key(ingredient.Name) is var name && (name.Contains("baking powder", StringComparison.Ordinal) || name.Contains("baking soda", StringComparison.Ordinal) || name.Contains("yeast", StringComparison.Ordinal) || name.Contains("gelatine", StringComparison.Ordinal))))
        {
            yield return ScalingCaution.Raising;
        }

        if (factor > 1 && ways.Any(way => way.Attention == Attention.HandsOn))
        {
            yield return ScalingCaution.HandsOnTime;
        }
    }
}

public enum ScalingCaution
{
    /// <summary>Twice the trays do not take twice the time, a thicker piece takes more than its weight says.</summary>
    OvenTime,

    /// <summary>A wider pan boils away more; liquid grows by less than the rest.</summary>
    PanAndLiquid,

    /// <summary>Taste before all of it goes in.</summary>
    Seasoning,

    /// <summary>Raising and setting agents follow the tin, not the number.</summary>
    Raising,

    /// <summary>Peeling twice as many takes twice as long.</summary>
    HandsOnTime,
}
