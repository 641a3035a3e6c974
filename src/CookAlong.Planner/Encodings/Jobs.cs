using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>
/// EnoughHands, Skills, Children, Availability and the host's choice of people: what needs hands, who may do it, and when
/// enough of them are in the kitchen for the whole of it. (Who then does what: <see cref="People"/>.)
/// </summary>
internal static class Jobs
{
    public static void Add(MealModel model)
    {
        var helpers = model.Meal.Helpers;
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            foreach (var way in step.Ways.Where(way => way.Way.Attention == Attention.HandsOn))
            {
                var able = Where(helpers, helper => helper.MayDo(step.Step));
                foreach (var (count, among) in Shares(helpers, step.Step, way.Way.People, able))
                {
                    Add(model, new Job(step.Step, null, step.Start, way.Minutes, way.Taken, way.Interval!, count, among));
                }
            }
        }

        foreach (var tend in model.Tends.Where(tend => !tend.Done))
        {
            var able = Where(helpers, helper => helper.MayDo(tend.Step, tend.Step.Tends[tend.Tend]));
            Add(model, new Job(
                tend.Step, (tend.Tend, tend.Turn), tend.Start, tend.Minutes, tend.Taken, tend.Interval!, 1, able));
        }
    }

    /// <summary>Those the host named do it; more hands, where it takes more than were named, come from the others.</summary>
    private static IEnumerable<(int Count, ImmutableArray<int> Able)> Shares(
        ImmutableArray<Helper> helpers, Step step, int people, ImmutableArray<int> able)
    {
        if (step.By.IsEmpty)
        {
            return [(people, able)];
        }

        var named = Where(helpers, helper => step.By.Contains(helper.Id));
        ImmutableArray<int> ableNamed = [.. named.Intersect(able)];
        if (named.Length >= people)
        {
            return [(people, ableNamed)];
        }

        return [(named.Length, ableNamed), (people - named.Length, [.. able.Except(named)])];
    }

    private static void Add(MealModel model, Job job)
    {
        if (job.Able.Length < job.Count)
        {
            model.Forbid(job.Taken);
            return;
        }

        var helpers = job.Able.Select(index => model.Meal.Helpers[index]).ToList();
        if (helpers.Count(helper => helper.Available.IsEmpty) < job.Count)
        {
            var starts = helpers.Select(helper => helper.Available.IsEmpty
                ? [(-model.End, model.End)]
                : Spans.StartsOf(helper.Available.Select(window => (model.Clock.Of(window.From), model.Clock.Of(window.To))), job.Minutes)).ToList();
            model.Within(job.Start, Spans.WhereAtLeast(job.Count, starts), job.Taken);
        }

        model.Jobs.Add(job);
    }

    private static ImmutableArray<int> Where(ImmutableArray<Helper> helpers, Func<Helper, bool> isSo) =>
        [.. Enumerable.Range(0, helpers.Length).Where(index => isSo(helpers[index]))];
}
