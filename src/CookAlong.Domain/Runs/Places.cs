using System.Collections.Immutable;

namespace CookAlong.Domain.Runs;

/// <summary>Which shelf or ring each thing of a plan gets. The plan only counts them; a screen must not move a tray about.</summary>
static class Places
{
    /// <summary>
    /// Numbers from 0, lowest first, neighbours where possible, each kept from start to end: greedy in order of the
    /// start, which never needs more than the most that are in use at once.
    /// </summary>
    /// <param name="stands">Where a thing stands already and stays; null = it may be given any place.</param>
    public static ImmutableDictionary<T, ImmutableArray<int>> Number<T>(
        IEnumerable<(T What, Minute From, Minute To, int Count)> uses, int places, Func<T, ImmutableArray<int>?> stands)
        where T : notnull
    {
        var freeFrom = Enumerable.Repeat(new Minute(long.MinValue), places).ToArray();
        var numbers = ImmutableDictionary.CreateBuilder<T, ImmutableArray<int>>();
        foreach (var use in uses.OrderBy(use => stands(use.What) is null).ThenBy(use => use.From).ThenBy(use => use.To))
        {
            // A plan never overfills; should one do so all the same, the place that is free first is shared.
            var free = Enumerable.Range(0, places)
                .OrderBy(place => freeFrom[place] <= use.From ? new Minute(long.MinValue) : freeFrom[place])
                .ThenBy(place => place)
                .ToArray();
            var count = Math.Min(use.Count, places);
            var side = Enumerable.Range(0, places - count + 1)
                .Select(first => Enumerable.Range(first, count))
                .FirstOrDefault(block => block.All(place => freeFrom[place] <= use.From));
            ImmutableArray<int> taken = stands(use.What) ?? [.. side ?? free.Take(count).Order()];
            foreach (var place in taken)
            {
                freeFrom[place] = freeFrom[place] < use.To ? use.To : freeFrom[place];
            }

            numbers[use.What] = taken;
        }

        return numbers.ToImmutable();
    }
}
