using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Relaxed;

/// <summary>
/// Lagrangian relaxation of a meal on time (M. L. Fisher, Management Science 27, 1981; of schedules R. H. Möhring and others,
/// Management Science 49, 2003): the rules for hands and ovens, which tie all dishes together, are given up for prices of each
/// minute. Each dish alone is then a tree of steps whose cheapest minutes are exactly known, and their sum a bound: no plan is
/// cheaper, whatever the prices. Prices rise where too much is wanted and fall where there is room; and the order in which the
/// dishes then want their steps is a good one to lay the whole meal out by.
/// </summary>
internal sealed class Relaxation
{
    /// <summary>Rounds without a better bound after which prices move by less.</summary>
    private const int Patience = 15;

    private const double Slower = 0.7;

    /// <summary>A bound higher by less is no better one.</summary>
    private const double Better = 0.1;

    private const double FirstStep = 1;

    /// <summary>Nothing comes of smaller ones.</summary>
    private const double LastStep = 0.003;

    /// <summary>Times the bound: a first plan may be so dear that a step towards it loses the prices' way.</summary>
    private const double MostGoal = 3;

    /// <summary>Before there is a bound.</summary>
    private const double FirstGoal = 50;

    /// <summary>Steps times minutes of the clock; more take too long, and forty bytes each.</summary>
    private const int MostCells = 1_000_000;

    /// <summary>Before this minute nothing is short: all day long there is little else to do.</summary>
    private readonly int from;
    private readonly KitchenHours hours;
    private readonly OvenMinutes ovens;
    private readonly Multipliers[] multipliers;

    /// <summary>What each waits for comes before it.</summary>
    private readonly List<RelaxedStep> steps = [];
    private readonly List<RelaxedStep> last = [];

    private Relaxation(Work work, Reach reach)
    {
        from = Math.Max(0, work.FirstOfDay);
        (hours, ovens) = (new KitchenHours(work, from), new OvenMinutes(work, from));
        multipliers = [.. hours.All, .. ovens.All];
        var all = work.Steps.Select(one => new RelaxedStep(work, one, reach, hours, ovens)).ToArray();
        foreach (var one in all)
        {
            // A tree has one place for it: before what it must be nearest to.
            if (one.Step.After.OrderBy(gap => gap.Most).Select(gap => (QuickGap?)gap).FirstOrDefault() is { } after)
            {
                all[after.Step].Add(one, after with { Step = one.Step.Index });
            }
            else
            {
                last.Add(one);
            }
        }

        last.ForEach(Sort);

        // Nothing before the first minute with a price ever changes: later rounds begin there.
        steps.ForEach(one => one.Settle(from: -1));
    }

    /// <summary>No plan on time costs less.</summary>
    public double Bound { get; private set; }

    /// <summary>Null where it has nothing to say: while a meal runs, and where no plan on time is possible.</summary>
    public static Relaxation? Of(Work work) =>
        work.Begun is null && work.Steps.Length > 0 && (long)work.Steps.Length * work.LastPromised <= MostCells && Reach.Of(work) is { } reach
            ? new Relaxation(work, reach)
            : null;

    /// <param name="best">What the cheapest plan so far costs.</param>
    /// <param name="lay">Lays the meal out by the relaxed ends, and says what the cheapest plan costs then.</param>
    public void Run(int most, double best, Func<bool> isOver, Func<IReadOnlyList<RelaxedStep>, double> lay)
    {
        var step = FirstStep;
        for (var (round, better) = (0, 0); round < most && step > LastStep && best > Bound + 1 && !isOver(); round++)
        {
            if (Settle() is not { } value)
            {
                return;
            }

            if (value > Bound + Better)
            {
                (Bound, better) = (value, round);
            }
            else if (round - better > Patience)
            {
                (step, better) = (step * Slower, round);
            }

            best = lay(steps);
            var goal = Math.Min(best, (Bound * MostGoal) + FirstGoal);
            var size = step * (goal - value) / Math.Max(1e-9, multipliers.Sum(one => one.Turn()));
            Array.ForEach(multipliers, one => one.Move(size));
            hours.Begin();
            ovens.Begin();
        }
    }

    /// <summary>Null where even so no plan is on time.</summary>
    private double? Settle()
    {
        var value = ovens.Turns;
        steps.ForEach(one => one.Settle(from));
        foreach (var one in last)
        {
            var (end, cost) = one.Cheapest();
            if (double.IsInfinity(cost))
            {
                return null;
            }

            value += cost;
            one.Take(end);
        }

        return value + hours.Settle() + ovens.Settle();
    }

    private void Sort(RelaxedStep one)
    {
        one.Before.ForEach(before => Sort(before.Step));
        steps.Add(one);
    }
}
