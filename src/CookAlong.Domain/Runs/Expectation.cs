using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>When everything will happen, as things stand now, if nobody changes the plan.</summary>
sealed class Expectation
{
    readonly Run run;
    readonly DateTimeOffset now;

    public Expectation(Run run, DateTimeOffset now)
    {
        this.run = run;
        this.now = now;
        Retimed = Retiming.MoveRight(run.Meal, run.PlanAsExpected, run.FactsAt(now), Minute.Of(now));
    }

    public Retimed Retimed { get; }

    /// <summary>When it started, or is expected to.</summary>
    public DateTimeOffset Starts(StepId step) => run.StateOf(step).Started ?? Retimed.Steps[step].Start.Utc;

    /// <summary>When it ended, or is expected to; for a running step its minutes from its start, which may be past.</summary>
    public DateTimeOffset Ends(StepId step) =>
        run.StateOf(step) is { Started: { } started } state
            ? state.Finished ?? started.AddMinutes(run.MinutesOf(step))
            : Retimed.Steps[step].End.Utc;

    /// <summary>What it waits for is done, and has rested as long as it must.</summary>
    public bool IsReady(Step step) => step.After.All(after =>
        run.StateOf(after.Step).Finished is { } end && end.AddMinutes(after.Least) <= now);

    /// <summary>
    /// When the call to begin is due. It must not move with the clock once it has come, or it would ring every minute;
    /// and it must not come while the step still waits.
    /// </summary>
    public DateTimeOffset CalledAt(Step step)
    {
        var expected = Starts(step.Id);
        if (!IsReady(step) || run.Pause is not null)
        {
            return Later(expected, (Minute.Of(now) + 1).Utc);
        }

        if (expected > now)
        {
            return expected;
        }

        var ready = step.After.Select(after => run.StateOf(after.Step).Finished!.Value.AddMinutes(after.Least))
            .Append(run.Plan.Step(step.Id).Start.Utc)
            .Max();
        return ready < now ? ready : now;
    }

    /// <summary>The dish is finished since; null = not yet.</summary>
    public DateTimeOffset? FinishedSince(Dish dish) =>
        dish.Steps.All(step => run.StateOf(step.Id).Finished is not null)
            ? dish.Steps.Max(step => run.StateOf(step.Id).Finished)
            : null;

    static DateTimeOffset Later(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;
}
