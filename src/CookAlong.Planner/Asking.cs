using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>Tries changed meals within the time there is for all of them.</summary>
internal sealed class Asking(PlanRequest request, Plan plan, CancellationToken stop)
{
    private static readonly TimeSpan Whole = TimeSpan.FromSeconds(2);

    private readonly Search clock = new(request.Limits with { Time = Whole, WithoutPlan = TimeSpan.Zero }, null, stop);

    public Plan? Try(Meal meal, int solvesToCome)
    {
        var isReproducible = request.Limits.Deterministic is not null;
        if (stop.IsCancellationRequested || (!isReproducible && clock.Left <= TimeSpan.Zero))
        {
            return null;
        }

        var limits = request.Limits with
        {
            Time = isReproducible ? request.Limits.Time : clock.Left / solvesToCome,
            WithoutPlan = TimeSpan.Zero,
            Deterministic = request.Limits.Deterministic / 8,
        };
        return CpSatPlanner.Best(request with { Meal = meal, Limits = limits, Previous = null }, new Search(limits, null, stop) { Prices = Prices.Of(request) });
    }

    /// <summary>Minutes less late, null minutes where there was no plan at all; null when the change does not help.</summary>
    public (int? Minutes, bool Helps)? Gain(Plan changed)
    {
        if (changed.Status == PlanStatus.None)
        {
            return null;
        }

        if (plan.Status == PlanStatus.None)
        {
            return (null, true);
        }

        var gain = plan.Cost.LateMinutes - changed.Cost.LateMinutes;
        return gain > 0 ? (gain, true) : null;
    }
}
