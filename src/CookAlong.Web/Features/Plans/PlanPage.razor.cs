using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Planner;
using CookAlong.Web.Features.Meals;
using Microsoft.AspNetCore.Components;

namespace CookAlong.Web.Features.Plans;

public sealed partial class PlanPage
{
    readonly CancellationTokenSource leave = new();
    CancellationTokenSource? planning;
    KeptMeal? kept;
    Plan? plan;
    Plan? first;
    Plan? leantFrom;
    Buffered? offered;
    double wished;
    bool isCurrent;
    bool isMissing;
    bool isPast;
    RunId? cooking;
    PlanProgress? found;
    ImmutableArray<StepMove> moves = [];
    StepId? chosen;
    Minute now;
    string? problem;
    ITimer? minutes;

    [Parameter] public Guid MealId { get; set; }

    /// <summary>The meal's plan; where it has none yet, what the planner has so far, to look at while it looks for a better one.</summary>
    Plan? Drawn => planning is not null && plan is null or { Status: PlanStatus.None } ? first : plan;

    protected override async Task OnInitializedAsync()
    {
        minutes = Time.CreateTimer(_ => InvokeAsync(LookAtTheClock), null, TimeSpan.Zero, TimeSpan.FromSeconds(20));
        await LoadAsync();
    }

    public void Dispose()
    {
        minutes?.Dispose();
        leave.Cancel();
        leave.Dispose();
        planning?.Dispose();
    }

    /// <summary>The meal as it is now, with its latest plan: what was on the page may be of another.</summary>
    async Task LoadAsync()
    {
        (kept, plan, isCurrent) = (await Book.OpenAsync(MealId, leave.Token), null, false);
        (moves, offered, leantFrom, made) = ([], null, null, null);
        isMissing = kept is null;
        cooking = await Log.UnfinishedAsync(MealId, isRehearsal: false, leave.Token);
        LookAtTheClock();
        if (kept is not null && await Desk.LatestAsync(kept.Row, kept.Meal, leave.Token) is var (latest, current))
        {
            (plan, isCurrent) = (latest, current);
        }

        chosen = plan?.Steps.Any(step => step.Step == chosen) == true ? chosen : null;
    }

    void LookAtTheClock()
    {
        var seen = (now, isPast);
        now = Minute.Of(Time.GetUtcNow());
        isPast = kept is not null && kept.Meal.FirstTableTime <= now;
        // The page is a whole plan, which is not drawn anew for nothing.
        if ((now, isPast) != seen)
        {
            StateHasChanged();
        }
    }

    /// <param name="cushion">Null keeps that of the plan on the page.</param>
    Task PlanAsync(int? cushion) => PlanAsync(cushion, plan?.Cost.Leans ?? Leans.None);

    Task PlanAsync(int? cushion, Leans leans) => BusyAsync(async (reports, stop) =>
    {
        if (await Desk.PlanAsync(kept!.Row, kept.Meal, cushion ?? plan?.Cost.Cushion ?? PlanRequest.UsualCushion, leans, reports, stop, leave.Token) is { } best)
        {
            Show(best);
        }
    });

    async Task LeanAsync(Leans leans)
    {
        var before = plan;
        await PlanAsync(cushion: null, leans);
        leantFrom = ReferenceEquals(plan, before) || plan is { Status: PlanStatus.None } ? null : before;
    }

    Task FindSurerAsync(double wish) => BusyAsync(async (reports, stop) =>
        (offered, wished) = (await Desk.SurerAsync(kept!.Meal, plan!, wish, reports, stop, leave.Token), wish));

    async Task TakeAsync(Plan taken)
    {
        if (!ReferenceEquals(taken, plan))
        {
            await Desk.KeepAsync(kept!.Row, kept.Meal, taken, leave.Token);
            Show(taken);
        }

        offered = null;
    }

    /// <summary>A meal that was changed, with the plan that was made before, as long as it needs nothing that the meal has no more.</summary>
    void Show(KeptMeal changed)
    {
        (kept, isCurrent, offered) = (changed, false, null);
        if (plan?.IsOf(changed.Meal) != true)
        {
            (plan, chosen, moves, leantFrom) = (null, null, [], null);
        }
    }

    void Show(Plan made)
    {
        var before = plan;
        (plan, isCurrent) = (made, true);
        moves = before is { Status: not PlanStatus.None } && made.Status != PlanStatus.None ? StepMove.Between(before, made) : [];
        chosen = made.Status == PlanStatus.None ? null : chosen;
    }

    async Task BusyAsync(Func<IProgress<PlanProgress>, CancellationToken, Task> work)
    {
        if (await Pace.AskHeavyAsync() is { } wait)
        {
            problem = wait;
            return;
        }

        (found, first, problem, moves, offered, leantFrom) = (null, null, null, [], null, null);
        planning = new CancellationTokenSource();
        try
        {
            await work(new Reports(better => InvokeAsync(() => Show(better))), planning.Token);
        }
        catch (OperationCanceledException) when (leave.IsCancellationRequested)
        {
            // They left; there is nobody to show a plan to.
        }
        finally
        {
            planning?.Dispose();
            planning = null;
        }
    }

    void Stop() => planning?.Cancel();

    void Show(PlanProgress better)
    {
        (found, first) = (better, better.Plan ?? first);
        StateHasChanged();
    }

    /// <summary>Keeps what the host wants of a step at once; the plan is old then until it is made again.</summary>
    async Task ChangeAsync(Action<MealDocument> wish)
    {
        var changed = await Book.EditAsync(kept!, wish, fromNow: false, leave.Token);
        problem = MealWords.WhyNotKept(changed);
        if (changed is MealEdit.Kept(var meal))
        {
            Show(meal);
            made = null;
        }
        else if (changed is MealEdit.Outdated)
        {
            await LoadAsync();
        }
    }

    /// <summary>The planner reports from its own thread and is never kept waiting.</summary>
    sealed class Reports(Action<PlanProgress> show) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => show(value);
    }
}
