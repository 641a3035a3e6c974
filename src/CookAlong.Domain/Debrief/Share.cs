using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Debrief;

/// <summary>What one pair of hands did.</summary>
/// <param name="PlannedMinutes">Of hands-on work, by the first plan.</param>
/// <param name="Minutes">Of hands-on work that was finished.</param>
/// <param name="HereMinutes">In the kitchen, from the first work to the last table.</param>
/// <param name="FairMinutes">Their part of all the work by how long they were here; a child's minute counts double, so its part is half.</param>
public sealed record Share(HelperId Helper, string Name, bool IsChild, int Steps, int PlannedMinutes, int Minutes, int HereMinutes, int FairMinutes)
{
    /// <summary>Minutes beyond the fair part from which somebody carried too much. Common practice, no source.</summary>
    const int Much = 15;

    /// <summary>Far more than the fair part: by a quarter and a quarter of an hour.</summary>
    public bool IsMuch => Minutes > FairMinutes + Math.Max(Much, FairMinutes / 4);

    internal static ImmutableArray<Share> Of(RunStory story)
    {
        var done = story.Meal.Steps.Where(step => story.IsDone(step.Id)).ToArray();
        if (done.Length == 0)
        {
            return [];
        }

        var first = Minute.Of(done.Min(step => story.StateOf(step.Id).Started!.Value));
        var last = Minute.Later(story.Meal.LastTableTime, Minute.Of(done.Max(step => story.StateOf(step.Id).Finished!.Value)));
        var work = done.SelectMany(step => story.HelpersOf(step.Id).Select(helper => (Helper: helper, Minutes: MinutesOf(story, step)))).ToLookup(one => one.Helper, one => one.Minutes);
        var all = work.Sum(one => one.Sum());
        var parts = story.Run.Helpers.ToDictionary(helper => helper.Id, helper => helper.MinutesHere(first, last) * (helper.IsChild ? .5 : 1));
        var whole = parts.Values.Sum();
        return
        [
            .. story.Run.Helpers.Select(helper => new Share(
                helper.Id,
                helper.Name,
                helper.IsChild,
                work[helper.Id].Count(),
                story.Plan.Steps.Where(planned => planned.Helpers.Contains(helper.Id)).Sum(planned => planned.Minutes),
                (int)Math.Round(work[helper.Id].Sum()),
                helper.MinutesHere(first, last),
                whole == 0 ? 0 : (int)Math.Round(all * parts[helper.Id] / whole))),
        ];
    }

    static double MinutesOf(RunStory story, Step step) =>
        story.StateOf(step.Id) is { Started: { } start, Finished: { } end } ? Math.Max(0, (end - start).TotalMinutes) : 0;
}
