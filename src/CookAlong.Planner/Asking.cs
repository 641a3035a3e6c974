using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>Tries changed meals within the time there is for all of them.</summary>
/// <param name="plan">The late one, or none, of the meal as it is.</param>
internal sealed class Asking(PlanRequest request, Plan plan, CancellationToken stop)
{
    /// <summary>Minutes. Who searches for a fifth of a second finds fewer than these by chance, and nobody borrows an oven for them.</summary>
    private const int Worth = 5;

    /// <summary>What the last try is at when its time is over takes a few hundredths more: two seconds are promised.</summary>
    private static readonly TimeSpan Whole = TimeSpan.FromMilliseconds(1900);

    private readonly Search clock = new(request.Limits with { Time = Whole, WithoutPlan = TimeSpan.Zero }, null, stop);

    private bool HasPlan => plan.Status != PlanStatus.None;

    /// <summary>A changed meal that is later than this is none that helps.</summary>
    private int MostLate => HasPlan ? Math.Max(0, plan.Cost.LateMinutes - Worth) : int.MaxValue;

    /// <param name="isNear">The late plan, put forward, is where to begin: with the change it is a plan, or nearly.</param>
    /// <returns>Null where the change does not help, as far as there is time to see.</returns>
    public Plan? Try(Meal meal, int solvesToCome, bool isNear)
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
        var told = isNear && HasPlan ? new Told(meal, plan, new MovePrice(0, 0)) : null;
        var whole = new Clock(Clock.Origins(meal, request.Now).Last(), 0, Clock.MostLateMinutes);
        return new Attempt(Nights.Observed(meal), whole, null, told, new Search(limits, null, stop) { Prices = Prices.Of(request) }).LeastLate(MostLate);
    }

    /// <summary>Minutes less late; null where there was no plan at all.</summary>
    public int? Gain(Plan changed) => HasPlan ? plan.Cost.LateMinutes - changed.Cost.LateMinutes : null;
}
