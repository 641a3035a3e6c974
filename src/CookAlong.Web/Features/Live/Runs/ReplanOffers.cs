using System.Collections.Concurrent;
using System.Collections.Immutable;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>When table time slips: asks the planner, in the background, for a plan that gets some of it back.</summary>
public sealed class ReplanOffers(IMealPlanner planner, TimeProvider time, ILogger<ReplanOffers> log)
{
    /// <summary>A slip that grows by this much since the planner was asked is worth asking again.</summary>
    const int AskAgainAfter = 2;

    static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(2), Workers: 1);

    readonly ConcurrentDictionary<RunId, Question> questions = new();

    /// <summary>The offer that still stands.</summary>
    public OfferedPlan? Of(Run run) => Standing(run)?.Shown;

    /// <summary>The command that takes this offer; null when it does not stand any more.</summary>
    public RunCommand.AcceptPlan? Find(Run run, Guid offer) =>
        Standing(run) is { } standing && standing.Shown.Id == offer ? new RunCommand.AcceptPlan(standing.Plan, standing.MadeAt) : null;

    /// <summary>Asks when there is a slip that nobody has asked about. The search goes on by itself; nobody need wait for it.</summary>
    public Task Look(Run run, Board board)
    {
        if (board.Slip is not { } slip)
        {
            questions.TryRemove(run.Id, out _);
            return Task.CompletedTask;
        }

        if (questions.TryGetValue(run.Id, out var asked)
            && (!asked.Answer.IsCompleted || (asked.Basis == run.PlanBasis && slip.LateMinutes < asked.LateMinutes + AskAgainAfter)))
        {
            return asked.Answer;
        }

        var now = time.GetUtcNow();
        var answer = Task.Run(() => Ask(run, slip.LateMinutes, now));
        answer.ContinueWith(
            failed => log.LogError(failed.Exception, "No new plan for run {Run}: the planner failed.", run.Id),
            CancellationToken.None,
            TaskContinuationOptions.OnlyOnFaulted,
            TaskScheduler.Default);
        questions[run.Id] = new Question(run.PlanBasis, slip.LateMinutes, answer);
        return answer;
    }

    Offer? Standing(Run run) =>
        questions.TryGetValue(run.Id, out var asked) && asked.Answer is { IsCompletedSuccessfully: true } answer && asked.Basis == run.PlanBasis && run.Ended is null
            ? answer.GetAwaiter().GetResult()
            : null;

    Offer? Ask(Run run, int lateMinutes, DateTimeOffset now)
    {
        var plan = planner.Plan(run.Replan(Limits, now));
        if (plan.Status == PlanStatus.None || run.Meal.Steps.Any(step => plan.Steps.All(planned => planned.Step != step.Id)))
        {
            return null;
        }

        var late = run.Meal.Courses.Max(course => plan.TableTime(course.Id) - course.TableTime);
        return late >= lateMinutes
            ? null
            : new Offer(new OfferedPlan(Guid.CreateVersion7(now), late, PlanDifference.Of(run.PlanAsItStands, plan, step => run.StateOf(step).Started is null)), plan, run.Sequence);
    }

    sealed record Question(long Basis, int LateMinutes, Task<Offer?> Answer);

    sealed record Offer(OfferedPlan Shown, Plan Plan, long MadeAt);
}
