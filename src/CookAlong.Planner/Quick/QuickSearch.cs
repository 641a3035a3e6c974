using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner.Quick;

/// <summary>
/// The quick search within one span of the clock: on time first; where nothing on time is found, as little late as it can.
/// Counts layouts, not seconds, so that it finds the same on any machine.
/// </summary>
internal sealed class QuickSearch(Work work, int seed)
{
    private readonly Annealing annealing = new(work, seed);
    private Genes? genes;

    /// <summary>The best plan so far.</summary>
    public Layout? Found { get; private set; }

    /// <summary>What it costs, moving from what people were told included.</summary>
    public long Cost { get; private set; }

    public int Late => Found is null ? 0 : Found.Tables.Zip(work.Promised).Max(table => table.First - table.Second);

    /// <summary>Null when some step of the meal cannot be done at all.</summary>
    public static QuickSearch? Of(Meal meal, Clock clock, Told? told, Prices prices, int seed) =>
        Reading.Of(meal, clock, told, prices) is { } work ? new QuickSearch(work, seed) : null;

    /// <param name="first">Layouts to try for a plan on time.</param>
    /// <param name="more">Layouts to spend on a better one once there is a plan.</param>
    /// <param name="better">Told of each better plan.</param>
    public void Run(int first, int more, Func<bool> isOver, Action? better = null)
    {
        if (Found is null && !IsFound(late: 0, first, isOver, better))
        {
            ServeLater(first / 3, isOver, better);
        }

        if (Found is not null)
        {
            annealing.Restart(genes!.Late, genes);
            annealing.Run(more, isOver, () => Keep(better));
        }
    }

    public Draft Draft() => QuickDraft.Of(work, Found!);

    public Plan Plan() => PlanWriting.Write(work.Meal, work.Clock, null, Draft(), QuickDraft.Doers(work, EvenShares.Of(work, Found!)), work.Prices);

    /// <summary>Puts the table off, by twice as much each time, until there is a plan; then halves the way back.</summary>
    private void ServeLater(int layouts, Func<bool> isOver, Action? better)
    {
        var tooSoon = 0;
        var late = Math.Max(5, annealing.Best.TooEarly);
        for (; Found is null && late <= work.Clock.MostLate && !isOver(); late *= 2)
        {
            tooSoon = IsFound(late, layouts, isOver, better) ? tooSoon : late;
        }

        for (var soEarly = Late; Found is not null && soEarly - tooSoon > 1 && !isOver(); soEarly = Late)
        {
            var between = (soEarly + tooSoon) / 2;
            tooSoon = IsFound(between, layouts, isOver, better) ? tooSoon : between;
        }
    }

    private bool IsFound(int late, int layouts, Func<bool> isOver, Action? better)
    {
        annealing.Restart(late, genes ?? annealing.BestGenes);
        var isFound = Keep(better);
        annealing.Run(layouts, () => isFound || isOver(), () => isFound |= Keep(better));
        return isFound;
    }

    private bool Keep(Action? better)
    {
        if (!annealing.Best.IsPlan)
        {
            return false;
        }

        if (Found is null || annealing.BestCost < Cost)
        {
            (Found, Cost, genes) = (annealing.Best.Copy(), annealing.BestCost, annealing.BestGenes.Copy());
            better?.Invoke();
        }

        return true;
    }
}
