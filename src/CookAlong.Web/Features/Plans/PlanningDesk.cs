using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.PlanFiles;
using CookAlong.Planner;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Telemetry;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Plans;

/// <summary>Where meals are planned, away from the pages: a few at a time, sharing the machine's cores, each plan kept when it is made.</summary>
public sealed class PlanningDesk(IMealPlanner planner, IDbContextFactory<CookAlongDb> database, TimeProvider clock) : IDisposable
{
    /// <summary>
    /// How long to look for a better plan once there is one that is not proven; the first is on the page meanwhile, and whoever is in
    /// a hurry stops earlier. A single cook's plan after one second is nearly half as dear again as after three.
    /// </summary>
    static readonly TimeSpan Longest = TimeSpan.FromSeconds(3);

    static readonly TimeSpan BeforeClearing = TimeSpan.FromSeconds(2);

    readonly SemaphoreSlim seats = new(2);
    int seated;

    /// <summary>
    /// The best plan found, kept under the meal's version. Raising <paramref name="stop"/> keeps the best so far; where there is
    /// none yet nothing is kept, and null says so. Raising <paramref name="leave"/> drops what was found.
    /// </summary>
    /// <exception cref="OperationCanceledException">They left.</exception>
    public async Task<Plan?> PlanAsync(MealRow row, Meal meal, int cushion, Leans leans, IProgress<PlanProgress>? progress, CancellationToken stop, CancellationToken leave)
    {
        // Whoever leans the plan otherwise wants it moved; moving has no price then.
        var previous = await ReadAsync(row, meal, leave) is var (latest, _) && latest.HasStepsOf(meal) && latest.Cost.Leans == leans ? latest : null;
        using var trace = Measures.Traces.StartActivity("plan");
        var began = clock.GetTimestamp();
        var plan = await SeatedAsync(meal, (request, either) =>
            Cushions.Rehearsed(meal, planner.Plan(request with { Previous = previous, Cushion = cushion, Leans = leans }, progress, either)), stop, leave);
        Measures.Planned(clock.GetElapsedTime(began), plan.Status.ToString());
        trace?.SetTag("status", plan.Status.ToString());
        if (plan.Status == PlanStatus.None && stop.IsCancellationRequested)
        {
            // Nobody has found out that there is none.
            return null;
        }

        await KeepAsync(row, meal, plan, leave);
        return plan;
    }

    /// <summary>A plan beside <paramref name="plain"/> that is on time with the chance wished for, not kept yet.</summary>
    /// <exception cref="OperationCanceledException">They left.</exception>
    public Task<Buffered> SurerAsync(Meal meal, Plan plain, double wish, IProgress<PlanProgress>? progress, CancellationToken stop, CancellationToken leave) =>
        SeatedAsync(meal, (request, either) => Cushions.Reach(planner, request with { Leans = plain.Cost.Leans }, plain, wish, progress, either), stop, leave);

    /// <summary>The latest plan of the meal, and whether it was made for the meal as it is now; null when there is none that still fits it.</summary>
    public async Task<(Plan Plan, bool IsCurrent)?> LatestAsync(MealRow row, Meal meal, CancellationToken leave = default) =>
        await ReadAsync(row, meal, leave) is var (plan, isCurrent) && plan.IsOf(meal) ? (plan, isCurrent) : null;

    public void Dispose() => seats.Dispose();

    async Task<(Plan Plan, bool IsCurrent)?> ReadAsync(MealRow row, Meal meal, CancellationToken leave)
    {
        await using var db = await database.CreateDbContextAsync(leave);
        var kept = await db.Plans.AsNoTracking().Where(plan => plan.Meal == row.Id).OrderByDescending(plan => plan.MadeAt).ThenByDescending(plan => plan.Id).FirstOrDefaultAsync(leave);
        return kept is not null && PlanFile.Read(kept.Document, meal).Plan is { } plan ? (plan, kept.MealVersion == row.Version) : null;
    }

    async Task<T> SeatedAsync<T>(Meal meal, Func<PlanRequest, CancellationToken, T> work, CancellationToken stop, CancellationToken leave)
    {
        await seats.WaitAsync(leave);
        try
        {
            // Whoever comes second gets half: the first has begun with all and will soon be done.
            var workers = Math.Clamp(Environment.ProcessorCount / Interlocked.Increment(ref seated), 1, 8);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(stop, leave);
            // The minute that has begun counts, as it does for a new plan of a run: what must start at once is due when it is read.
            var request = new PlanRequest(meal, new PlanLimits(Longest, workers), Minute.Of(clock.GetUtcNow()));
            var done = await Task.Run(() => work(request, either.Token), leave);
            leave.ThrowIfCancellationRequested();
            return done;
        }
        finally
        {
            Interlocked.Decrement(ref seated);
            seats.Release();
            _ = ClearAsync();
        }
    }

    /// <summary>Once the plan is on the page, and nobody is planning. Not after the replans of a kitchen that cooks: its taps come first.</summary>
    async Task ClearAsync()
    {
        await Task.Delay(BeforeClearing, clock);
        if (Volatile.Read(ref seated) == 0)
        {
            SpareMemory.GiveBack();
        }
    }

    /// <summary>Makes it the meal's plan.</summary>
    public async Task KeepAsync(MealRow row, Meal meal, Plan plan, CancellationToken leave)
    {
        await using var db = await database.CreateDbContextAsync(leave);
        var now = clock.GetUtcNow();
        db.Plans.Add(new PlanRow
        {
            Id = Guid.CreateVersion7(now),
            Meal = row.Id,
            MealVersion = row.Version,
            Document = PlanFile.Write(plan, meal),
            MadeAt = now.ToUnixTimeMilliseconds(),
        });
        await db.SaveChangesAsync(leave);
    }
}
