using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>Each pair of hands does its jobs one after another, in the plan's order.</summary>
static class HelperOrder
{
    public static IEnumerable<Link> Links(OrderDraft draft)
    {
        var jobs =
            from one in draft.Entries.Index()
            from helper in HandsOf(one.Item)
            group one.Index by helper;
        foreach (var helper in jobs.Select(job => job.ToArray()))
        {
            // Somebody may be in the middle of more than one: all of them come before the next new job.
            var next = Array.FindIndex(helper, job => !draft.Entries[job].IsBegun);
            for (var at = 0; at < next; at++)
            {
                yield return new(helper[at], FromEnd: true, helper[next], 0);
            }

            for (var at = Math.Max(1, next + 1); next >= 0 && at < helper.Length; at++)
            {
                yield return new(helper[at - 1], FromEnd: true, helper[at], 0);
            }
        }
    }

    static ImmutableArray<HelperId> HandsOf(Entry entry) => entry switch
    {
        { Tend: { } tend } => [tend.Helper],
        { Step: { } step, Way.Attention: Attention.HandsOn } => step.Helpers,
        _ => [],
    };
}
