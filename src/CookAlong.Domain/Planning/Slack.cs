using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning.Order;

namespace CookAlong.Domain.Planning;

/// <summary>How long a step may slip before table time does, others re-timed in the same order.</summary>
public static class Slack
{
    /// <summary>Minutes per step before a run, measured against the table times of the plan itself, be they late or not.</summary>
    public static ImmutableDictionary<StepId, int> Of(Meal meal, Plan plan)
    {
        var order = OrderOfWork.Of(meal, plan);
        var earliest = new EarliestTimes(order, now: 0);
        return Between(order, earliest, new LatestTimes(order, earliest, course => course.TableTime));
    }

    internal static ImmutableDictionary<StepId, int> Between(OrderOfWork order, EarliestTimes earliest, LatestTimes latest)
    {
        var slack = ImmutableDictionary.CreateBuilder<StepId, int>();
        foreach (var (at, entry) in order.Entries.Index())
        {
            if (entry.Step is { } step && !entry.IsFinished)
            {
                slack[step.Step] = Math.Max(0, entry.IsBegun ? latest.Ends[at] - earliest.Ends[at] : latest.Starts[at] - earliest.Starts[at]);
            }
        }

        return slack.ToImmutable();
    }
}
