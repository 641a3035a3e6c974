using CookAlong.Domain;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner;

/// <summary>Which steps must come before which, however the meal is planned.</summary>
internal sealed class Before
{
    private readonly Dictionary<StepId, HashSet<StepId>> all = [];

    public static Before Of(Meal meal)
    {
        var before = new Before();
        var steps = meal.Steps.ToDictionary(step => step.Id);
        foreach (var step in steps.Values)
        {
            before.Find(step, steps);
        }

        return before;
    }

    /// <summary>The first is over before the second begins, by what waits for what.</summary>
    public bool Comes(OvenStay first, OvenStay then) => (first.Step, then.Step) switch
    {
        ({ } one, { } other) => all[other.Id].Contains(one.Id),
        ({ } one, null) => first.Dish.Id == then.Dish.Id || then.Dish.Steps.Any(step => all[step.Id].Contains(one.Id)),
        (null, _) => false,
    };

    private HashSet<StepId> Find(Step step, Dictionary<StepId, Step> steps)
    {
        if (all.TryGetValue(step.Id, out var known))
        {
            return known;
        }

        var found = all[step.Id] = [];
        foreach (var after in step.After.Where(after => after.Least >= 0))
        {
            found.Add(after.Step);
            found.UnionWith(Find(steps[after.Step], steps));
        }

        return found;
    }
}
