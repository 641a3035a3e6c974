using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Planner.Encodings;

namespace CookAlong.Planner;

/// <summary>
/// What sharing the oven makes a meal cost, whatever hands, rings and all else there are: only the dishes that go into an oven, from
/// there to the table, as if they cooked by themselves. No plan of the whole waits less. A small model, proved in a tenth of a second,
/// of which the large one proves little in ten: there the order in the oven is lost among a hundred other things.
/// </summary>
internal static class OvenAlone
{
    /// <summary>Of the time left and of a deterministic limit, the most that it may take: it ends sooner where it is proved, and what it has proved by then holds.</summary>
    public const double Part = 0.2;

    /// <summary>One dish has the oven to itself.</summary>
    private const int Fewest = 2;

    /// <summary>The meal without all else; null where no dishes share an oven, or with several ovens, of which little is proved so soon.</summary>
    public static Meal? Of(Meal meal)
    {
        if (meal.Kitchen.Ovens.Length != 1)
        {
            return null;
        }

        var dishes = meal.Dishes.Where(dish => dish.Steps.Any(IsInOven)).ToList();
        return dishes.Count < Fewest ? null : meal with { Dishes = [.. dishes.Select(Without)] };
    }

    /// <summary>
    /// What stays is what the wait for the table is counted from: what comes after an oven, and every step that nothing of the
    /// dish waits for. Of the rules of those steps some fall away, none comes in.
    /// </summary>
    private static Dish Without(Dish dish)
    {
        var waitedFor = Holds.WaitedFor(dish.Steps);
        var kept = dish.Steps.Where(step => IsInOven(step) || !waitedFor.Contains(step.Id)).Select(step => step.Id).ToHashSet();
        var before = 0;
        while (before != kept.Count)
        {
            before = kept.Count;
            kept.UnionWith(dish.Steps.Where(step => step.After.Any(after => kept.Contains(after.Step))).Select(step => step.Id));
        }

        return dish with { Steps = [.. dish.Steps.Where(step => kept.Contains(step.Id)).Select(step => Alone(step, kept))] };
    }

    private static Step Alone(Step step, HashSet<StepId> kept) => step with
    {
        Way = Alone(step.Way),
        Options = [.. step.Options.Select(Alone)],
        After = [.. step.After.Where(after => kept.Contains(after.Step))],
        Tends = [],
    };

    private static Way Alone(Way way) => way with { Attention = Attention.Unattended, Uses = way.Uses with { Rings = 0, Appliances = [] } };

    private static bool IsInOven(Step step) => step.Ways.Any(one => one.Way.Uses.Oven is not null);
}
