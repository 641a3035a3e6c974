using System.Diagnostics.CodeAnalysis;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner.Quick;

/// <summary>
/// The quick search within one span of the clock: on time first; where nothing on time is found, as little late as it can.
/// Counts layouts, not seconds, so that it finds the same on any machine.
/// </summary>
/// <param name="workers">Threads; however many, the same comes out.</param>
internal sealed partial class QuickSearch(Work work, int seed, int workers = 1)
{
    private readonly Annealing annealing = new(work, seed);
    private Breeding? breeding;
    private int bredBefore;
    private Genes? genes;

    /// <summary>The best plan so far.</summary>
    public Layout? Found { get; private set; }

    /// <summary>What it costs as the solver counts it, moving from what people were told included.</summary>
    public long Cost { get; private set; }

    public int Late => Found is null ? 0 : Found.Tables.Zip(work.Promised).Max(table => table.First - table.Second);

    /// <summary>How many have been made.</summary>
    public int Layouts => annealing.Layouts + bredBefore + (breeding?.Layouts ?? 0);

    /// <summary>After how many of them the best was found.</summary>
    public int FoundAfter { get; private set; }

    /// <summary>Null when some step of the meal cannot be done at all.</summary>
    public static QuickSearch? Of(Meal meal, Clock clock, Told? told, Prices prices, int seed, SoFar? so = null, int workers = 1) =>
        Reading.Of(meal, clock, told, prices, so) is { } work ? new QuickSearch(work, seed, workers) : null;

    /// <param name="first">Layouts to try for a plan on time.</param>
    /// <param name="more">Layouts to spend on a better one once there is a plan.</param>
    /// <param name="better">Told of each better plan.</param>
    public void Run(int first, int more, Func<bool> isOver, Action? better = null)
    {
        if (Found is null)
        {
            if (work.Moved is { } moved)
            {
                FromMoved(moved, first / 2, isOver, better);
            }
            else
            {
                if (work.Told is { } told)
                {
                    IsFound(late: 0, first / 8, isOver, better, Genes.FromMoved(work, told, told.Ends, told.Late));
                }

                // Some meals have a plan soon near the guess of which none of the longest first are near, and others the other way
                // round; and most with many dishes, or few hands, where what comes too soon is mended first.
                var guess = Genes.FirstGuess(work, longestFirst: false);
                _ = IsFound(late: 0, first / 8, isOver, better, guess.MendingFirst()) || IsFound(late: 0, first / 4, isOver, better, guess);
            }

            Breed(first, isOver, better);
        }

        if (Found is null || work.Steps.Length == 0)
        {
            return;
        }

        var until = Layouts + more;
        int Left() => until - Layouts;
        ServeSooner(more / 2, isOver, better);
        if (work.Moved is not null || work.Told is not null)
        {
            // Most of the genes are as they were told, and worth keeping; before it runs it may have to be another meal altogether.
            annealing.Restart(genes!.Late, genes);
            annealing.Run(work.Moved is null ? Left() / 2 : Left(), isOver, () => Keep(better));
        }

        if (work.Moved is null)
        {
            breeding!.Restart(genes!.Late, genes);
            breeding.Run(Left(), isOver, () => KeepBred(better));
        }
    }

    /// <summary>
    /// Once more from first guesses, with populations that so many layouts are worth: larger ones find more, but later. Does
    /// nothing where that is no more than the last populations had.
    /// </summary>
    public void BreedOn(int layouts, Func<bool> isOver, Action? better = null)
    {
        if (Found is null || work.Steps.Length == 0 || layouts <= breeding?.Layouts)
        {
            return;
        }

        Populate(layouts);
        if (Late == 0)
        {
            breeding.Restart(genes!.Late, genes);
            breeding.Run(layouts, isOver, () => KeepBred(better));
            return;
        }

        var isOnTime = false;
        breeding.Run(layouts, () => isOnTime || isOver(), () => isOnTime |= KeepBred(better));
        if (!isOnTime)
        {
            IsSettled(better);
        }
    }

    /// <summary>The last populations go on for so many layouts: once a meal is on time, that brings more than new ones. Nothing where there are none.</summary>
    public void GoOn(int layouts, Func<bool> isOver, Action? better = null) => breeding?.Run(layouts, isOver, () => KeepBred(better));

    /// <summary>Looks for a plan on time, and where there is none for one that is as little late as the best begins too early.</summary>
    private void Breed(int layouts, Func<bool> isOver, Action? better)
    {
        Populate(layouts);
        if (Found is not null)
        {
            // Bred from first guesses it gets further in large meals, from what was told in small ones.
            ServeSooner(layouts / 2, isOver, better);
            ComeBack(tooSoon: -1, layouts / Halvings, isOver, better);
            return;
        }

        var isFound = KeepBred(better);
        breeding.Run(layouts, () => isFound || isOver(), () => isFound |= KeepBred(better));
        if (!isFound && !IsSettled(better))
        {
            ServeLater(layouts / 3, isOver, better);
        }
    }

    [MemberNotNull(nameof(breeding))]
    private void Populate(int layouts)
    {
        bredBefore += breeding?.Layouts ?? 0;
        breeding = new Breeding(work, seed, layouts, workers, [.. orders.Select(order => order.Genes)]);
    }

    public Draft Draft() => QuickDraft.Of(work, Found!);

    public Plan Plan(SoFar? so = null) => PlanWriting.Write(work.Meal, work.Clock, so, Draft(), QuickDraft.Doers(work, EvenShares.Of(work, Found!)), work.Prices);

    /// <param name="from">Where to begin; null = where the last search ended.</param>
    private bool IsFound(int late, int layouts, Func<bool> isOver, Action? better, Genes? from = null)
    {
        annealing.Restart(late, from ?? (work.Moved is { } moved ? Genes.FromMoved(work, moved, moved.Ends, [.. work.Promised.Select(_ => late)]) : (genes ?? annealing.BestGenes).ForAllCourses()));
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
            (Found, Cost, genes, FoundAfter) = (best.Copy(), cost, from.Copy(), Layouts);
            better?.Invoke();
        }

        return true;
    }
}
