using System.Collections.Immutable;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>A meal's leftovers as they stand.</summary>
/// <param name="Dishes">Those that were cooked, also those of which nothing is left.</param>
public sealed record KeptLeftovers(KeptMeal Meal, RegionInForce Region, ImmutableArray<DishLeft> Dishes)
{
    public IEnumerable<DishLeft> Left => Dishes.Where(dish => dish.Portions > 0);
}

/// <summary>Where the time comes from at which a dish left the heat.</summary>
public enum HeatKnown
{
    /// <summary>Somebody ticked its steps off while it was cooked.</summary>
    FromTheRun,

    /// <summary>It was not cooked with a board: its table time stands for it.</summary>
    FromTheTable,

    /// <summary>Somebody said so here.</summary>
    Said,
}

/// <summary>One dish's leftovers.</summary>
/// <param name="Kinds">One at the least; the strictest limit of all of them holds.</param>
public sealed record DishLeft(Dish Dish, int Portions, ImmutableSortedSet<LeftoverKind> Kinds, HotTimes Hot, HeatKnown Known, LeftoverTimes Times);
