using System.Collections.Concurrent;
using System.Collections.Immutable;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>When table time slips, or the plan was upset, or something was ready early: asks the planner, in the background, for a better plan.</summary>
public sealed class ReplanOffers(IMealPlanner planner, RunClocks clocks, ILogger<ReplanOffers> log)
{
    /// <summary>A slip that grows by this much since the planner was asked is worth asking again.</summary>
    const int AskAgainAfter = 2;

    /// <summary>Two find a good plan in half the time of one. Taps find room beside them, since they take a millisecond or two.</summary>
    static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(2), Workers: Math.Min(2, Environment.ProcessorCount));

    readonly ConcurrentDictionary<RunId, Question> questions = new();

    /// <summary>The best offer that still stands. A better one may follow while the search goes on; one that was shown can be taken all the same.</summary>
    public OfferedPlan? Of(Run run) => Standing(run) is [.., var last] ? last.Shown : null;

    /// <summary>The command that takes the best offer, once the search is over; null before, and when none stands.</summary>
    public RunCommand.AcceptPlan? BestOf(Run run) =>
        questions.TryGetValue(run.Id, out var asked) && asked.Answer.IsCompletedSuccessfully && Standing(run) is [.., var best]
            ? new RunCommand.AcceptPlan(best.Plan, best.MadeAt)
            : null;

    /// <summary>The command that takes this offer; null when it does not stand any more.</summary>
    public RunCommand.AcceptPlan? Find(Run run, Guid offer) =>
        Standing(run).FirstOrDefault(one => one.Shown.Id == offer) is { } standing ? new RunCommand.AcceptPlan(standing.Plan, standing.MadeAt) : null;

    /// <summary>Asks when there is a reason that nobody has asked about. The search goes on by itself; nobody need wait for it.</summary>
    /// <param name="better">Told of each better offer.</param>
    public Task Look(Run run, Board board, Action? better = null)
    {
        var late = board.Courses.Max(course => course.Expected - course.Promised);
        if (board.Slip is null && run.Wish is not { IsEarly: false } && !(run.Wish is { IsEarly: true } && late > 0))
        {
            questions.TryRemove(run.Id, out _);
            return Task.CompletedTask;
        }

        // The clock's beat and a tap may ask at once: one search is enough.
        lock (questions)
        {
            if (questions.TryGetValue(run.Id, out var asked)
                && (asked.Basis == run.PlanBasis ? !asked.Answer.IsCompleted || late < asked.LateMinutes + AskAgainAfter : !asked.Answer.IsCompleted && board.Slip is null))
            {
                return asked.Answer;
            }

            asked?.Stop.Cancel();
            var now = clocks.Now(run.Id);
            var (offers, stop) = (new Offers(), new CancellationTokenSource());
            var answer = Task.Run(() => Ask(run, late, now, offers, better, stop.Token));
            answer.ContinueWith(
                failed => log.LogError(failed.Exception, "No new plan for run {Run}: the planner failed.", run.Id),
                CancellationToken.None,
                TaskContinuationOptions.OnlyOnFaulted,
                TaskScheduler.Default);
            questions[run.Id] = new Question(run.PlanBasis, late, answer, offers, stop);
            return answer;
        }
    }

    public void Forget(RunId run) => questions.TryRemove(run, out _);

    ImmutableList<Offer> Standing(Run run) =>
        questions.TryGetValue(run.Id, out var asked) && !asked.Answer.IsFaulted && asked.Basis == run.PlanBasis && run.Ended is null ? asked.Offers.All : [];

    void Ask(Run run, int lateMinutes, DateTimeOffset now, Offers offers, Action? better, CancellationToken stop)
    {
        void Hear(Plan plan)
        {
            if (IsBetter(run, plan, lateMinutes, offers))
            {
                var late = run.Meal.Courses.Max(course => plan.TableTime(course.Id) - course.TableTime);
                var changes = PlanDifference.Of(run.PlanAsItStands, plan, step => run.StateOf(step).Started is null);
                offers.Add(new Offer(new OfferedPlan(Guid.CreateVersion7(now), late, changes), plan, run.Sequence));
                better?.Invoke();
            }
        }

        Hear(planner.Plan(run.Replan(Limits, now), new Found(Hear), stop));
    }

    /// <summary>Where the plan was upset any plan is: the old one cannot be kept. Else it must serve sooner.</summary>
    static bool IsBetter(Run run, Plan plan, int lateMinutes, Offers offers)
    {
        if (plan.Status == PlanStatus.None || run.Meal.Steps.Any(step => plan.Steps.All(planned => planned.Step != step.Id)))
        {
            return false;
        }

        return offers.All is [.., var last]
            ? plan.Cost.Objective < last.Plan.Cost.Objective
            : run.Wish is { IsEarly: false } || run.Meal.Courses.Max(course => plan.TableTime(course.Id) - course.TableTime) < lateMinutes;
    }

    sealed record Question(long Basis, int LateMinutes, Task Answer, Offers Offers, CancellationTokenSource Stop);

    sealed record Offer(OfferedPlan Shown, Plan Plan, long MadeAt);

    /// <summary>Each better than the one before; written by the search, read by screens.</summary>
    sealed class Offers
    {
        volatile ImmutableList<Offer> all = [];

        public ImmutableList<Offer> All => all;

        public void Add(Offer offer) => all = all.Add(offer);
    }

    sealed class Found(Action<Plan> consider) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value)
        {
            if (value.Plan is { } plan)
            {
                consider(plan);
            }
        }
    }
}
