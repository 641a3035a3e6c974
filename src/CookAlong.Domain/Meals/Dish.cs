using System.Collections.Immutable;

namespace CookAlong.Domain.Meals;

/// <summary>One thing on the table.</summary>
/// <param name="Holds">Ways it may wait between its last step's end and the table; never empty, the planner chooses one.</param>
public sealed record Dish(
    DishId Id,
    string Name,
    CourseId Course,
    decimal Serves,
    ImmutableArray<Ingredient> Ingredients,
    ImmutableArray<Hold> Holds,
    ImmutableArray<Step> Steps)
{
    /// <summary>The step, and the oven work that leads to it: a joint may roast in several steps.</summary>
    public IEnumerable<Step> OvenWorkTo(Step step, Func<Step, Way> wayOf)
    {
        HashSet<StepId> before = [step.Id];
        foreach (var earlier in Steps.Reverse())
        {
            if (Steps.Any(one => before.Contains(one.Id) && one.After.Any(after => after.Step == earlier.Id)))
            {
                before.Add(earlier.Id);
            }
        }

        return Steps.Where(one => one.Id == step.Id || (before.Contains(one.Id) && wayOf(one).Uses.Oven is not null));
    }
}

/// <param name="Quantity">Null for "some", "to taste".</param>
/// <param name="Contains">Allergens in it, in the words guests' avoids use.</param>
public sealed record Ingredient(string Name, decimal? Quantity, string? Unit, string? Preparation, ImmutableArray<string> Contains)
{
    /// <summary>What may be taken instead, as written: "margarine", "1 tbsp fresh thyme".</summary>
    public ImmutableArray<string> Alternatives { get; init; } = [];

    /// <summary>The recipe's own line; null when nobody kept it.</summary>
    public string? Written { get; init; }
}
