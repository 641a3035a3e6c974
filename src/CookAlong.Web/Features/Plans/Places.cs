using System.Collections.Immutable;
using CookAlong.Domain;

namespace CookAlong.Web.Features.Plans;

/// <summary>Who stands where: a plan says how many shelves or rings a step takes, a picture has to say which.</summary>
public static class Places
{
    /// <summary>
    /// Greedy colouring of intervals in order of their start, lowest free place first; what takes several places gets
    /// neighbours where there are some. Never needs more places than are in use at once, unless neighbours are asked for
    /// and broken up; then it takes what is free, and a place beyond the last only when the plan itself is overfull.
    /// </summary>
    /// <returns>For each span, in the order given, its place numbers from 0 in order.</returns>
    public static ImmutableArray<ImmutableArray<int>> Assign(IReadOnlyList<(Minute From, Minute To, int Count)> spans, int places)
    {
        var assigned = new ImmutableArray<int>[spans.Count];
        var freeFrom = new List<Minute>(Enumerable.Repeat(new Minute(long.MinValue), places));
        foreach (var index in Enumerable.Range(0, spans.Count).OrderBy(i => spans[i].From).ThenByDescending(i => spans[i].To))
        {
            var (from, to, count) = spans[index];
            while (freeFrom.Count(free => free <= from) < count)
            {
                freeFrom.Add(new Minute(long.MinValue));
            }

            assigned[index] = Pick(freeFrom, from, count);
            foreach (var place in assigned[index])
            {
                freeFrom[place] = to;
            }
        }

        return [.. assigned];
    }

    static ImmutableArray<int> Pick(List<Minute> freeFrom, Minute from, int count)
    {
        for (var first = 0; first + count <= freeFrom.Count; first++)
        {
            if (freeFrom.Skip(first).Take(count).All(free => free <= from))
            {
                return [.. Enumerable.Range(first, count)];
            }
        }

        return [.. Enumerable.Range(0, freeFrom.Count).Where(place => freeFrom[place] <= from).Take(count)];
    }
}
