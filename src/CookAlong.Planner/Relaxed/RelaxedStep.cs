using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Relaxed;

/// <summary>A step with what it waits for, in a tree: its cheapest minutes are found from the leaves to the last step of its dish.</summary>
internal sealed class RelaxedStep
{
    private readonly KitchenHours hours;
    private readonly OvenMinutes ovens;

    /// <summary>Per way, by its start: what costs the same whatever the prices.</summary>
    private readonly double[][] fixedCost;

    /// <summary>By its end, where it is the last of its dish; else empty.</summary>
    private readonly double[] waiting;
    private readonly double[]?[] ofOven;

    /// <summary>By its start: what all that comes before it costs at the least.</summary>
    private readonly double[] before;

    /// <summary>By its end: what it costs with all that comes before it, and the way that is so.</summary>
    private readonly double[] least;
    private readonly int[] ways;
    private readonly int[] queue;
    private readonly int longest;

    public RelaxedStep(Work work, QuickStep step, Reach reach, KitchenHours hours, OvenMinutes ovens)
    {
        (Step, this.hours, this.ovens) = (step, hours, ovens);
        (StartFrom, StartTo, EndFrom, EndTo) = (reach.StartFrom[step.Index], reach.StartTo[step.Index], reach.EndFrom[step.Index], reach.EndTo[step.Index]);
        fixedCost = [.. step.Ways.Select(way => Enumerable.Range(StartFrom, StartTo - StartFrom + 1).Select(start => Fixed(work, start)).ToArray())];
        ofOven = [.. step.Ways.Select((_, way) => ovens.Until(step.Index, way))];
        (before, least, ways) = (new double[StartTo - StartFrom + 1], new double[EndTo - EndFrom + 1], new int[EndTo - EndFrom + 1]);
        (queue, longest) = (new int[least.Length], step.Ways.Max(way => way.Minutes));
        var dish = work.Dishes[step.Dish];
        var holds = Enumerable.Range(EndFrom, step.IsLast && dish.LastSteps == 1 ? least.Length : 0)
            .Select(end => dish.Holds.Index().Select(hold => (hold.Index, Cost: OfWait(hold.Item, work.Promised[step.Course] - end))).MinBy(one => one.Cost))
            .ToList();
        (waiting, Holds) = ([.. holds.Select(one => one.Cost)], [.. holds.Select(one => one.Index)]);
    }

    public QuickStep Step { get; }

    /// <summary>What it waits for, as far as nothing else waits for it in this tree.</summary>
    public List<(RelaxedStep Step, QuickGap Gap, int[] Ends)> Before { get; } = [];

    /// <summary>By its end, the hold its dish waits in: a position in <see cref="QuickDish.Holds"/>; empty where it is not the last.</summary>
    public int[] Holds { get; }

    /// <summary>The cheapest end, once taken, and which way it is done.</summary>
    public int End { get; private set; }

    public int Way { get; private set; }

    public int EndFrom { get; }

    private int EndTo { get; }

    private int StartFrom { get; }

    private int StartTo { get; }

    /// <summary>Joins what waits for it; before either is settled.</summary>
    public void Add(RelaxedStep child, QuickGap gap) => Before.Add((child, gap, new int[before.Length]));

    /// <summary>Works out its costs anew for ends after <paramref name="from"/>; what it waits for has been settled.</summary>
    public void Settle(int from)
    {
        var firstEnd = Math.Max(EndFrom, from + 1);
        var firstStart = Math.Max(StartFrom, firstEnd - longest);
        before.AsSpan(Math.Min(before.Length, firstStart - StartFrom)).Clear();
        foreach (var (child, gap, ends) in Before)
        {
            child.AddLeast(firstStart, before, StartFrom, gap, ends);
        }

        var costs = least.AsSpan(Math.Min(least.Length, firstEnd - EndFrom));
        costs.Fill(double.PositiveInfinity);
        for (var index = 0; index < Step.Ways.Length; index++)
        {
            SettleWay(index, firstEnd, costs);
        }

        for (var at = 0; waiting.Length > 0 && at < costs.Length; at++)
        {
            costs[at] += waiting[firstEnd - EndFrom + at];
        }
    }

    /// <summary>Where it is the cheapest way so far, its costs.</summary>
    private void SettleWay(int index, int firstEnd, Span<double> costs)
    {
        var way = Step.Ways[index];
        var (from, to) = (Math.Max(firstEnd, StartFrom + way.Minutes), Math.Min(EndTo, StartTo + way.Minutes));
        var count = to - from + 1;
        if (count <= 0)
        {
            return;
        }

        var start = from - way.Minutes;
        var own = fixedCost[index].AsSpan(start - StartFrom, count);
        var earlier = before.AsSpan(start - StartFrom, count);
        var (hour, oven) = (way.IsHandsOn ? hours.Until(Step.Course) : hours.Nothing, ofOven[index] ?? hours.Nothing);
        var handsFrom = hour.AsSpan(start, count);
        var handsTo = hour.AsSpan(from, count);
        var ovenFrom = oven.AsSpan(start, count);
        var ovenTo = oven.AsSpan(from, count);
        var best = costs.Slice(from - firstEnd, count);
        var taken = ways.AsSpan(from - EndFrom, count);
        var ahead = Math.Clamp(hours.FirstOfDay - start, 0, count);
        for (var at = 0; at < count; at++)
        {
            var cost = own[at] + earlier[at] + (ovenTo[at] - ovenFrom[at]) + (at < ahead ? 0 : way.People * (handsTo[at] - handsFrom[at]));
            if (cost < best[at])
            {
                best[at] = cost;
                taken[at] = index;
            }
        }
    }

    /// <summary>Its cheapest end, the latest of such, for one that nothing waits for.</summary>
    public (int End, double Cost) Cheapest()
    {
        var at = 0;
        for (var end = 1; end < least.Length; end++)
        {
            at = least[end] <= least[at] ? end : at;
        }

        return (at + EndFrom, least[at]);
    }

    /// <summary>It ends then, all it waits for when that is cheapest, and hands and ovens are asked for it.</summary>
    public void Take(int end)
    {
        (End, Way) = (end, ways[end - EndFrom]);
        var way = Step.Ways[Way];
        var start = end - way.Minutes;
        if (way.IsHandsOn)
        {
            hours.Take(Step.Course, start, end, way.People);
        }

        ovens.Take(Step.Index, Way, start, end);
        foreach (var (child, _, ends) in Before)
        {
            child.Take(ends[start - StartFrom]);
        }
    }

    /// <summary>For each start of what waits for this: its least within the gap, by a queue of ends that no later one is cheaper than.</summary>
    private void AddLeast(int firstStart, double[] before, int startFrom, QuickGap gap, int[] ends)
    {
        var (costs, waiting, endFrom) = (least, queue, EndFrom);
        var (head, tail, next) = (0, 0, Math.Max(endFrom, firstStart - gap.Most));
        for (var start = firstStart; start - startFrom < before.Length; start++)
        {
            for (var to = Math.Min(EndTo, start - gap.Least); next <= to; next++)
            {
                var cost = costs[next - endFrom];
                while (tail > head && costs[waiting[tail - 1] - endFrom] >= cost)
                {
                    tail--;
                }

                waiting[tail++] = next;
            }

            while (tail > head && waiting[head] < start - gap.Most)
            {
                head++;
            }

            if (tail == head)
            {
                before[start - startFrom] = double.PositiveInfinity;
                continue;
            }

            ends[start - startFrom] = waiting[head];
            before[start - startFrom] += costs[waiting[head] - endFrom];
        }
    }

    private double Fixed(Work work, int start) =>
        (start < hours.FirstOfDay ? Prices.Ahead : 0) + (Step.Told is { } told ? work.Moving.Of(start - told) : 0);

    private static double OfWait(QuickHold hold, int wait) => wait < hold.Hold.Least || wait > hold.Hold.Limit ? double.PositiveInfinity : hold.PriceOf(wait);
}
