using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Menu;

/// <summary>
/// Where each step may lie for its table, by the recipe alone: gaps, holds and windows, as if the kitchen had room for
/// everything at once. No plan that serves on time has a step outside.
/// </summary>
public sealed class Bounds(Meal meal)
{
    readonly Dictionary<StepId, Minute> latestEnds = [];
    readonly Dictionary<StepId, Minute?> earliestEnds = [];
    readonly ILookup<StepId, (Step Step, After After)> followers = meal.Steps
        .SelectMany(step => step.After.Select(after => (step, after)))
        .ToLookup(one => one.after.Step);

    static int Shortest(Step step) => step.Ways.Min(way => way.Way.Minutes.Likely);

    public Minute LatestStart(Step step) => LatestEnd(step) - Shortest(step);

    /// <summary>Null where nothing keeps it from lying as early as anybody likes.</summary>
    public Minute? EarliestEnd(Step step)
    {
        if (!earliestEnds.TryGetValue(step.Id, out var end))
        {
            end = earliestEnds[step.Id] = Latest([.. FromFollowers(step), FromHold(step), FromClock(step)]);
        }

        return end;
    }

    public Minute LatestEnd(Step step)
    {
        if (!latestEnds.TryGetValue(step.Id, out var end))
        {
            var dish = meal.DishOf(step.Id);
            end = meal.CourseOf(dish).TableTime - dish.Holds.Min(hold => hold.Least);
            foreach (var (follower, after) in followers[step.Id])
            {
                end = Minute.Earlier(end, LatestStart(follower) - after.Least);
            }

            end = step.Window is { } window ? Minute.Earlier(end, window.To) : end;
            end = step.At is { } at ? Minute.Earlier(end, at + step.Ways.Max(way => way.Way.Minutes.Likely)) : end;
            latestEnds[step.Id] = end;
        }

        return end;
    }

    /// <summary>The follower's start less the longest gap.</summary>
    IEnumerable<Minute?> FromFollowers(Step step) => followers[step.Id].Select(one =>
        one.After.Most is { } most && EarliestEnd(one.Step) is { } end ? end - one.Step.Ways.Max(way => way.Way.Minutes.Likely) - most : (Minute?)null);

    /// <summary>The dish waits from the end of its last step; which that is, only one without rivals says.</summary>
    Minute? FromHold(Step step)
    {
        var dish = meal.DishOf(step.Id);
        var before = Before(step);
        return dish.Steps.All(other => other.Id == step.Id || before.Contains(other.Id))
            ? meal.CourseOf(dish).TableTime - dish.Holds.Max(hold => hold.Limit)
            : null;
    }

    static Minute? FromClock(Step step) => Latest([step.At is { } at ? at + Shortest(step) : null, step.Window is { } window ? window.From + Shortest(step) : null]);

    /// <summary>All that it waits for, directly or not.</summary>
    HashSet<StepId> Before(Step step)
    {
        var before = new HashSet<StepId>();
        var open = new Stack<Step>([step]);
        while (open.TryPop(out var one))
        {
            foreach (var after in one.After.Where(after => before.Add(after.Step)))
            {
                open.Push(meal.Step(after.Step));
            }
        }

        return before;
    }

    static Minute? Latest(IEnumerable<Minute?> all) => all.Where(one => one is not null).DefaultIfEmpty(null).Max();
}
