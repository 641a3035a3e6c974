namespace CookAlong.Planner.Quick;

/// <content>Where it begins near what was told, and how it comes to be as little late as it can.</content>
internal sealed partial class QuickSearch
{
    /// <summary>Into how many goes the layouts are parted that look for less lateness.</summary>
    private const int Goes = 4;

    /// <summary>The way back to the promised table is halved about so often, and half as many layouts again are spent before.</summary>
    private const int Halvings = 10;

    /// <summary>
    /// Near the plan that people were told: as it is pushed by what is late, moved right in its own order, and that with tables
    /// up to as soon as they can be. Where none of these is a plan (hands have gone), something near one is looked for.
    /// </summary>
    private void FromMoved(QuickMoved moved, int layouts, Func<bool> isOver, Action? better)
    {
        List<Genes> all = [.. Pushed.All(work, moved)];
        for (var part = 0; part <= Goes; part++)
        {
            all.Add(Genes.FromMoved(work, moved, moved.Ends, [.. moved.Late.Zip(moved.LateAtLeast, (most, least) => least + ((most - least) * part / Goes))]));
        }

        foreach (var genes in all)
        {
            IsFound(genes.Late, layouts: 0, isOver, better, genes);
        }

        foreach (var genes in Found is null ? all : [])
        {
            genes.MadeLast = true;
            IsFound(genes.Late, layouts: 0, isOver, better, genes);
        }

        for (var one = 0; one < all.Count && Found is null && !isOver(); one += Goes / 2)
        {
            IsFound(all[one].Late, layouts, isOver, better, all[one]);
        }
    }

    /// <summary>Goes on from what the solver found where it is less late: what else that costs it has not looked at.</summary>
    public void GoOnFrom(Draft sooner, int layouts, Func<bool> isOver, Action? better)
    {
        // Seldom a plan at once: hands are only counted there. Changing a little at a time makes one, and gets as far as breeding does.
        var from = Genes.Of(work, sooner);
        IsFound(from.Late, layouts: 0, isOver, better, from);
        annealing.Run(layouts / 2, isOver, () => Keep(better));
        breeding!.Restart(annealing.BestGenes.Late, annealing.BestGenes);
        breeding.Run(layouts / 2, isOver, () => KeepBred(better));
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

    /// <summary>
    /// No other price is worth a minute late: first all at once, then halfway, and half of what is left. With a table that is far
    /// too soon, what is on the heat is in the way of what must follow it.
    /// </summary>
    private void ServeSooner(int layouts, Func<bool> isOver, Action? better)
    {
        var until = breeding!.Layouts + layouts;
        for (var late = 0; late < Late && breeding.Layouts < until && !isOver();)
        {
            breeding.Restart(late, genes);
            var isSooner = false;
            breeding.Run(Math.Min(layouts / Goes, until - breeding.Layouts), () => isSooner || isOver(), () => isSooner |= breeding.BestCost < Cost && IsSettled(better));
            late = isSooner ? late : (late + Late + 1) / 2;
        }
    }

    /// <summary>Each course put off by what the best that is bred begins too early makes a plan that is cheaper than any so far.</summary>
    private bool IsSettled(Action? better)
    {
        var (put, early, before) = (breeding!.BestGenes.Copy(), breeding.Best.Early, Found is null ? long.MaxValue : Cost);
        for (var go = 0; go < Goes; go++)
        {
            put.PutOff(early);
            if (put.Late > work.Clock.MostLate)
            {
                return false;
            }

            annealing.Restart(put.Late, put);
            if (Keep(better))
            {
                return Cost < before;
            }

            early = annealing.Best.Early;
        }

        return false;
    }
}
