using CookAlong.Planner.Relaxed;

namespace CookAlong.Planner.Quick;

/// <content>What the relaxed meal says of it: how cheap it can be at the most, and orders to lay it out by.</content>
internal sealed partial class QuickSearch
{
    /// <summary>Enough for orders that hardly change any more; with six times as many the bound is 3 % higher.</summary>
    public const int RelaxedRounds = 300;

    /// <summary>Of the first plan's day, how much hands are busy where they are short: nine tenths and more with one or two cooks to twelve dishes, half with four.</summary>
    private const double Short = 0.65;

    /// <summary>How much of a round goes into the mean of all: the relaxed ends of one round swing about it.</summary>
    private const double OfMean = 0.1;

    /// <summary>Rounds before the prices say anything.</summary>
    private const int Settling = 30;

    /// <summary>As many orders are bred from.</summary>
    private const int MostOrders = 20;

    /// <summary>The cheapest first.</summary>
    private readonly List<(long Cost, Genes Genes)> orders = [];

    /// <summary>No plan on time costs less; 0 where none is known.</summary>
    public long Bound { get; private set; }

    /// <summary>
    /// Looks at the meal with its hands and ovens priced instead of limited: <see cref="Relaxation"/>. Nothing where the meal is late
    /// or runs already, or where those in the kitchen stand idle much of its day: their minutes are worth little then, and the
    /// solver proves soon. The same number of rounds gives the same answer on any machine.
    /// </summary>
    public void Relax(int rounds, Func<bool> isOver, Action? better = null)
    {
        if (Late > 0 || Busy() < Short || Relaxation.Of(work) is not { } relaxation)
        {
            return;
        }

        var (mean, round) = (new double[work.Steps.Length], 0);
        relaxation.Run(rounds, Found is null ? double.PositiveInfinity : Cost, isOver, steps =>
        {
            foreach (var step in steps)
            {
                ref var of = ref mean[step.Step.Index];
                of = round == 0 ? step.End : (of * (1 - OfMean)) + (step.End * OfMean);
            }

            if (round++ >= Settling)
            {
                LayBy(steps, step => step.End, better);
                LayBy(steps, step => (int)mean[step.Step.Index], better);
            }

            return Found is null ? double.PositiveInfinity : Cost;
        });
        Bound = Math.Max(Bound, (long)Math.Ceiling(relaxation.Bound - 1e-3));
    }

    private void LayBy(IReadOnlyList<RelaxedStep> steps, Func<RelaxedStep, int> end, Action? better)
    {
        var order = Genes.InOrder(work, steps, end);
        annealing.Restart(late: 0, order);
        Keep(better);
        if (orders.Count < MostOrders || annealing.BestCost < orders[^1].Cost)
        {
            orders.Insert(orders.FindLastIndex(one => one.Cost <= annealing.BestCost) + 1, (annealing.BestCost, order));
            orders.RemoveRange(Math.Min(orders.Count, MostOrders), Math.Max(0, orders.Count - MostOrders));
        }
    }

    /// <summary>How much of the day of the plan so far its hands are busy, 0 to 1; all of it while there is none.</summary>
    private double Busy()
    {
        var busy = work.Steps.Where(step => Found is { } plan && plan.Ways[step.Index].IsHandsOn && plan.Starts[step.Index] >= work.FirstOfDay)
            .Select(step => (Way: Found!.Ways[step.Index], Start: Found.Starts[step.Index]))
            .ToList();
        var hands = busy.SelectMany(one => one.Way.Shares).SelectMany(share => share.Able).Distinct().Count();
        return busy.Count == 0 ? 1 : busy.Sum(one => one.Way.Minutes * one.Way.People) / (double)(hands * Math.Max(1, work.LastPromised - busy.Min(one => one.Start)));
    }
}
