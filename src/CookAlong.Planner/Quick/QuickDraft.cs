using System.Collections.Immutable;
using CookAlong.Domain;

namespace CookAlong.Planner.Quick;

/// <summary>A layout in the planner's own terms.</summary>
internal static class QuickDraft
{
    public static Draft Of(Work work, Layout layout) => new(
        work.Steps.ToImmutableDictionary(step => step.Step.Id, step => new DraftStep(
            layout.Starts[step.Index], layout.Ends[step.Index], layout.Ways[step.Index].Option, layout.Spots[step.Index].OvenId, layout.Spots[step.Index].Grill)),
        [.. layout.Jobs.Where(job => job.Tend is not null)
            .Select(job => new DraftTend(work.Steps[job.Step].Step.Id, job.Tend!.Tend, job.Tend.Turn, job.Start, job.Minutes, Done: false)),
            .. work.Begun?.PastTends ?? []],
        [.. work.Dishes.Index().Where(dish => dish.Item.Steps.Length > 0)
            .Select(dish => new DraftHold(dish.Item.Dish.Id, layout.Holds[dish.Index].Index, layout.GoesIn[dish.Index], layout.WarmSpots[dish.Index]?.OvenId))],
        work.Meal.Courses.Index().ToImmutableDictionary(course => course.Item.Id, course => layout.Tables[course.Index]),
        Jobs: []);

    public static ILookup<(StepId Step, (int Tend, int Turn)? Tend), HelperId> Doers(Work work, IEnumerable<QuickJob> jobs) => jobs.ToLookup(
        job => (work.Steps[job.Step].Step.Id, job.Tend is { } tend ? (tend.Tend, tend.Turn) : ((int Tend, int Turn)?)null),
        job => work.Meal.Helpers[job.Helper].Id);
}
