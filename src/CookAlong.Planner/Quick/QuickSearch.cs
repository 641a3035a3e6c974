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
    private Breeding? breeding;
    private Genes? genes;

    /// <summary>The best plan so far.</summary>
    public Layout? Found { get; private set; }

    /// <summary>What it costs, moving from what people were told included.</summary>
    public long Cost { get; private set; }

    public int Late => Found is null ? 0 : Found.Tables.Zip(work.Promised).Max(table => table.First - table.Second);

    /// <summary>Null when some step of the meal cannot be done at all.</summary>
    public static QuickSearch? Of(Meal meal, Clock clock, Told? told, Prices prices, int seed, SoFar? so = null) =>
        Reading.Of(meal, clock, told, prices, so) is { } work ? new QuickSearch(work, seed) : null;

    /// <param name="first">Layouts to try for a plan on time.</param>
    /// <param name="more">Layouts to spend on a better one once there is a plan.</param>
    /// <param name="better">Told of each better plan.</param>
    public void Run(int first, int more, Func<bool> isOver, Action? better = null)
    {
        if (Found is null && work.Moved is { } moved)
        {
            FromMoved(moved, first / 3, isOver, better);
        }
        else if (Found is null && !IsFound(late: 0, layouts: 0, isOver, better))
        {
            Breed(first, isOver, better);
        }

        if (Found is null || work.Steps.Length == 0)
        {
            return;
        }

        if (work.Moved is null)
        {
            Improve(more, isOver, better);
            return;
        }

        annealing.Restart(genes!.Late, genes);
        annealing.Run(more, isOver, () => Keep(better));
    }

    /// <summary>Looks for a plan on time, and where there is none for one that is as little late as the best begins too early.</summary>
    private void Breed(int layouts, Func<bool> isOver, Action? better)
    {
        breeding = new Breeding(work, seed, layouts);
        var isFound = KeepBred(better);
        breeding.Run(layouts, () => isFound || isOver(), () => isFound |= KeepBred(better));
        if (isFound || work.Clock.MostLate == 0)
        {
            return;
        }

        breeding.Restart(Math.Min(breeding.Best.TooEarly, work.Clock.MostLate));
        if (!KeepBred(better))
        {
            ServeLater(layouts / 3, isOver, better);
        }
    }

    /// <summary>A minute sooner, and again, for half of the layouts: no other price is worth a minute late. Then whatever is cheaper.</summary>
    private void Improve(int layouts, Func<bool> isOver, Action? better)
    {
        breeding ??= new Breeding(work, seed, layouts);
        var spent = breeding.Layouts;
        while (Late > 0 && breeding.Layouts - spent < layouts / 2 && !isOver())
        {
            breeding.Restart(genes!.Late - 1, genes);
            var isFound = KeepBred(better);
            breeding.Run((layouts / 2) - (breeding.Layouts - spent), () => isFound || isOver(), () => isFound |= KeepBred(better));
        }

        breeding.Restart(genes!.Late, genes);
        breeding.Run(layouts - (breeding.Layouts - spent), isOver, () => KeepBred(better));
    }

    public Draft Draft() => QuickDraft.Of(work, Found!);

    public Plan Plan(SoFar? so = null) => PlanWriting.Write(work.Meal, work.Clock, so, Draft(), QuickDraft.Doers(work, EvenShares.Of(work, Found!)), work.Prices);

    /// <summary>
    /// From the plan moved right: each course is at first as late as that makes it, then halfway back to its promise for as
    /// long as there is a plan. Where it is none (hands have gone), the table is put off as it would be for a new meal.
    /// </summary>
    private void FromMoved(QuickMoved moved, int layouts, Func<bool> isOver, Action? better)
    {
        var late = moved.Tables.Zip(work.Promised, (table, promised) => Math.Max(0, table - promised)).ToArray();
        if (IsFound(late.Max(), layouts, isOver, better))
        {
            ComeBack(tooSoon: -1, layouts, isOver, better);
        }
        else if (!IsFound(0, layouts, isOver, better))
        {
            ServeLater(layouts, isOver, better);
        }
    }

    /// <summary>Puts the table off, by twice as much each time, until there is a plan; then halves the way back.</summary>
    private void ServeLater(int layouts, Func<bool> isOver, Action? better)
    {
        var tooSoon = 0;
        var late = Math.Max(5, annealing.Best.TooEarly);
        for (var most = work.Clock.MostLate; Found is null && tooSoon < most && !isOver(); late *= 2)
        {
            late = Math.Min(late, most);
            tooSoon = IsFound(late, layouts, isOver, better) ? tooSoon : late;
        }

        ComeBack(tooSoon, layouts, isOver, better);
    }

    private void ComeBack(int tooSoon, int layouts, Func<bool> isOver, Action? better)
    {
        // Not by what the best is late: a course already served stays as late as it was, and the earlier plan may cost more.
        for (var soEarly = Late; Found is not null && soEarly - tooSoon > 1 && !isOver();)
        {
            var between = tooSoon < 0 ? 0 : (soEarly + tooSoon) / 2;
            (tooSoon, soEarly) = IsFound(between, layouts, isOver, better) ? (tooSoon, between) : (between, soEarly);
        }
    }

    /// <param name="from">Where to begin; null = where the last search ended.</param>
    private bool IsFound(int late, int layouts, Func<bool> isOver, Action? better, Genes? from = null)
    {
        annealing.Restart(late, from ?? (work.Moved is { } moved ? Genes.FromMoved(work, moved, late) : genes ?? annealing.BestGenes));
        var isFound = Keep(better);
        annealing.Run(layouts, () => isFound || isOver(), () => isFound |= Keep(better));
        return isFound;
    }

    private bool Keep(Action? better) => Keep(annealing.Best, annealing.BestCost, annealing.BestGenes, better);

    private bool KeepBred(Action? better) => Keep(breeding!.Best, breeding.BestCost, breeding.BestGenes, better);

    private bool Keep(Layout best, long cost, Genes from, Action? better)
    {
        if (!best.IsPlan)
        {
            return false;
        }

        if (Found is null || cost < Cost)
        {
            (Found, Cost, genes) = (best.Copy(), cost, from.Copy());
            better?.Invoke();
        }

        return true;
    }
}
