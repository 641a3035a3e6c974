using CookAlong.Domain;
using CookAlong.Domain.Confidence;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Plans;

/// <summary>Where meals are planned, away from the pages: a few at a time, sharing the machine's cores, each plan kept when it is made.</summary>
public sealed class PlanningDesk(IMealPlanner planner, IDbContextFactory<CookAlongDb> database, TimeProvider clock) : IDisposable
{
    /// <summary>How long to look for a better plan once there is one that is not proven; whoever is in a hurry stops earlier.</summary>
    static readonly TimeSpan Longest = TimeSpan.FromSeconds(1);

    /// <summary>Kitchens cooked through to say how likely a plan is to be on time.</summary>
    const int Rehearsals = 10_000;

    readonly SemaphoreSlim seats = new(2);
    int seated;

    /// <summary>The best plan found, kept under the meal's version. Raising <paramref name="stop"/> keeps the best so far; raising <paramref name="leave"/> drops it.</summary>
    /// <exception cref="OperationCanceledException">They left.</exception>
    public async Task<Plan> PlanAsync(MealRow row, Meal meal, IProgress<PlanProgress>? progress, CancellationToken stop, CancellationToken leave)
    {
        await seats.WaitAsync(leave);
        try
        {
            // Whoever comes second gets half: the first has begun with all and will soon be done.
            var workers = Math.Clamp(Environment.ProcessorCount / Interlocked.Increment(ref seated), 1, 8);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(stop, leave);
            var previous = await LatestAsync(row, meal, leave);
            var request = new PlanRequest(meal, new PlanLimits(Longest, workers), Minute.Of(clock.GetUtcNow()) + 1, Previous: previous?.Plan);
            var plan = await Task.Run(() => Rehearsed(meal, planner.Plan(request, progress, either.Token)), leave);
            leave.ThrowIfCancellationRequested();
            await KeepAsync(row, meal, plan, leave);
            return plan;
        }
        finally
        {
            Interlocked.Decrement(ref seated);
            seats.Release();
        }
    }

    /// <summary>The latest plan of the meal, and whether it was made for the meal as it is now; null when there is none that still fits it.</summary>
    public async Task<(Plan Plan, bool IsCurrent)?> LatestAsync(MealRow row, Meal meal, CancellationToken leave = default)
    {
        await using var db = await database.CreateDbContextAsync(leave);
        var kept = await db.Plans.AsNoTracking().Where(plan => plan.Meal == row.Id).OrderByDescending(plan => plan.MadeAt).ThenByDescending(plan => plan.Id).FirstOrDefaultAsync(leave);
        return kept is not null && PlanFile.Read(kept.Document, meal).Plan is { } plan && Fits(meal, plan) ? (plan, kept.MealVersion == row.Version) : null;
    }

    public void Dispose() => seats.Dispose();

    static Plan Rehearsed(Meal meal, Plan plan) =>
        plan.Status == PlanStatus.None || plan.Confidence is not null ? plan : plan with { Confidence = Simulation.Run(meal, plan, Rehearsals, seed: 1) };

    /// <summary>Steps may have come and gone since it was made; times and people may differ, that is what planning again is for.</summary>
    static bool Fits(Meal meal, Plan plan) =>
        plan.Status == PlanStatus.None || plan.Steps.Select(step => step.Step).ToHashSet().SetEquals(meal.Steps.Select(step => step.Id));

    async Task KeepAsync(MealRow row, Meal meal, Plan plan, CancellationToken leave)
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
