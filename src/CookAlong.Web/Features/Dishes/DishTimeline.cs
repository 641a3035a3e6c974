using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;

namespace CookAlong.Web.Features.Dishes;

/// <summary>A step of the little timeline. Minutes before the table are negative.</summary>
public sealed record TimelineStep(Step Step, int Start, int End);

/// <summary>
/// A dish by itself, drawn backward from the table: every step as late as what waits for it allows, with hands, oven and
/// rings without end. It is no plan, and promises none.
/// </summary>
/// <param name="Steps">In the dish's order.</param>
/// <param name="Ready">When the last step ends: 0, or earlier by the rest that the food needs.</param>
public sealed record DishTimeline(ImmutableArray<TimelineStep> Steps, int Ready)
{
    /// <summary>Minutes of a stretch in which nothing begins or ends that are drawn to scale.</summary>
    const int Drawn = 60;

    public int First => Steps.Min(step => step.Start);

    /// <summary>The most hands at one time.</summary>
    public int MostHands => Steps.Max(one => Steps
        .Where(other => other.Step.Way.Attention == Attention.HandsOn && other.Start <= one.Start && one.Start < other.End)
        .Sum(other => other.Step.Way.People));

    public static DishTimeline Of(Dish dish)
    {
        var ready = -dish.Holds.Min(hold => hold.Least);
        var after = dish.Steps.SelectMany(step => step.After.Select(link => (Waits: step, link))).ToLookup(one => one.link.Step);
        var ends = new Dictionary<StepId, int>();
        int Start(Step step) => End(step) - step.Way.Minutes.Likely;
        int End(Step step)
        {
            if (!ends.TryGetValue(step.Id, out var end))
            {
                ends[step.Id] = end = after[step.Id].Select(one => Start(one.Waits) - one.link.Least).Append(ready).Min();
            }

            return end;
        }

        return new DishTimeline([.. dish.Steps.Select(step => new TimelineStep(step, Start(step), End(step)))], ready);
    }

    /// <summary>Where a minute is drawn, 0 (the first) to 1 (the table). Long stretches in which nothing happens are drawn short.</summary>
    public double Place(int minute)
    {
        double Long(int from, int to) => Math.Min(to - from, Drawn + ((to - from) / 60.0));
        var all = Steps.SelectMany(step => new[] { step.Start, step.End }).Append(0).Distinct().Order().ToList();
        double whole = 0, before = 0;
        foreach (var (from, to) in all.Zip(all.Skip(1)))
        {
            var length = Long(from, to);
            whole += length;
            before += minute >= to ? length : minute > from ? length * (minute - from) / (to - from) : 0;
        }

        return whole == 0 ? 1 : before / whole;
    }
}
