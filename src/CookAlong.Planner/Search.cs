using System.Diagnostics;
using System.Globalization;
using System.Runtime.ExceptionServices;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>One plan's searching: its limits, the time it has left, who is told and who may stop it.</summary>
internal sealed class Search(PlanLimits limits, IProgress<PlanProgress>? progress, CancellationToken stop)
{
    public static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(10);

    private static readonly TimeSpan BetweenAnswers = TimeSpan.FromMilliseconds(40);

    /// <summary>Seconds; it takes a hundredth. Where the effort is counted, what comes of it must not hang on how busy the machine is.</summary>
    private string Completing => limits.Deterministic is null ? "0.2" : "60";

    private readonly Stopwatch watch = Stopwatch.StartNew();

    /// <summary>When the first answer was found.</summary>
    private TimeSpan? first;

    /// <summary>What the best plan told of so far costs.</summary>
    private long best = long.MaxValue;

    public TimeSpan Elapsed => watch.Elapsed;

    /// <summary>Until the search ends: from the first answer on there is the limit's time, before that the longer time without a plan.</summary>
    public TimeSpan Left => (first + limits.Time ?? Longest) - watch.Elapsed;

    private TimeSpan Longest => limits.Deterministic is null && limits.WithoutPlan > limits.Time ? limits.WithoutPlan : limits.Time;

    public bool IsStopped => stop.IsCancellationRequested;

    public CancellationToken Stop => stop;

    public PlanLimits Limits => limits;

    public Prices Prices { get; init; } = Prices.Usual;

    /// <summary>The quick search has a better plan.</summary>
    public void Tell(Quick.QuickSearch quick)
    {
        first ??= watch.Elapsed;
        Tell(new PlanProgress(watch.Elapsed, quick.Cost, Answer.GapOf(quick.Cost, quick.Bound), quick.Late));
    }

    /// <summary>The cheapest whole plan told of.</summary>
    public Plan? Whole { get; private set; }

    /// <summary>A whole plan that can be taken at once.</summary>
    /// <param name="moves">What moving from an earlier plan costs beside it.</param>
    public void Tell(Plan plan, long moves)
    {
        Whole = Whole is { } whole && whole.Cost.Objective <= plan.Cost.Objective ? whole : plan;
        progress?.Report(new PlanProgress(watch.Elapsed, plan.Cost.Objective + moves, plan.Gap, plan.Cost.LateMinutes) { Plan = plan });
    }

    private void Tell(PlanProgress better)
    {
        if (better.Objective < best)
        {
            best = better.Objective;
            progress?.Report(better);
        }
    }

    /// <summary>What was found proved to be no plan.</summary>
    public void Forget() => (first, best) = (null, long.MaxValue);

    /// <param name="time">The longest this solve may take once it has found something.</param>
    /// <param name="giveUp">The longest it may take while it has found nothing; no meaning where the limit is deterministic.</param>
    /// <param name="share">Of a deterministic limit, 0 to 1.</param>
    /// <param name="giveWay">
    /// From then on it ends where it is still this far from proof: moving a few steps at a time gets further then.
    /// </param>
    /// <param name="heedStop">False for the short work that turns the best so far into a plan: once stopped, its first answer will do.</param>
    /// <param name="proves">With two workers: search for proof of what is found rather than for more.</param>
    /// <param name="found">Told of answers on the way: at once, then no oftener than <see cref="BetweenAnswers"/>, since the search waits meanwhile.</param>
    public Answer Solve(
        MealModel model, TimeSpan time, TimeSpan giveUp, double share, bool heedStop = true, (TimeSpan After, double Gap)? giveWay = null, bool proves = false,
        Action<Answer>? found = null)
    {
        if (heedStop && IsStopped)
        {
            return new Answer(null, 0, 0, IsImpossible: false);
        }

        using var solver = new CpSolver { StringParameters = Parameters(limits.Deterministic is null && giveUp > time ? giveUp + time : time, share, proves, model.IsLatenessOnly) };
        using var told = new Told(model, watch, progress is null || model.IsLatenessOnly ? null : Tell, found);
        var begun = watch.Elapsed;

        // Asking the solver to stop before it has set up is lost on it, so the question is put again and again.
        using (new Timer(_ => StopWhere(solver, (IsStopped && (heedStop || told.First is not null)) || GivesWay() || (limits.Deterministic is null && IsOver())), null, Poll, Poll))
        {
            solver.Solve(model.Cp, told);
        }

        first ??= told.First;

        told.Failure?.Throw();
        var status = solver.Response!.Status;
        return status switch
        {
            CpSolverStatus.Optimal or CpSolverStatus.Feasible =>
                new Answer(Draft.Read(model, solver), (long)Math.Round(solver.ObjectiveValue), Bound(solver.BestObjectiveBound), IsImpossible: false),
            CpSolverStatus.Infeasible => new Answer(null, 0, 0, IsImpossible: true),
            CpSolverStatus.Unknown => new Answer(null, 0, Bound(solver.BestObjectiveBound), IsImpossible: false),
            CpSolverStatus.ModelInvalid => throw new InvalidOperationException($"The planner made a model that is none: {model.Cp.Validate()}"),
            _ => throw new UnreachableException($"solver status {status}"),
        };

        bool GivesWay() => giveWay is { } way && told.First is { } found && told.Gap > way.Gap && watch.Elapsed - (first is null ? found : begun) > way.After;

        bool IsOver() => told.First is { } found
            ? watch.Elapsed - (first is null ? found : begun) > time
            : watch.Elapsed - begun > giveUp;
    }

    private static void StopWhere(CpSolver solver, bool isTime)
    {
        if (isTime)
        {
            solver.StopSearch();
        }
    }

    /// <summary>
    /// Works out what follows from the hinted times and places and hints that too. Without it the solver takes as a beginning a plan
    /// of the same times whose minutes it has counted anyhow: twice as dear, or more.
    /// </summary>
    /// <returns>That beginning as an answer; null where the hints do not make one.</returns>
    public Answer? CompleteHint(MealModel model)
    {
        using var solver = new CpSolver { StringParameters = $"fix_variables_to_their_hinted_value:true num_workers:1 max_time_in_seconds:{Completing}" };
        if (solver.Solve(model.Cp) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return null;
        }

        Hints.All(model, [.. solver.Response!.Solution]);
        return new Answer(Draft.Read(model, solver), (long)Math.Round(solver.ObjectiveValue), Bound: 0, IsImpossible: false);
    }

    /// <summary>What a part of the meal costs at the least, as far as that is proved within this time; its answers are no plans.</summary>
    /// <param name="share">Of a deterministic limit.</param>
    public long LeastOf(MealModel part, TimeSpan time, double share) =>
        Aside(part, "linearization_level:0", time, share, (solver, status) => status is CpSolverStatus.Infeasible ? 0 : Bound(solver.BestObjectiveBound));

    /// <summary>The best that is found of a model with an aim of its own. Null where nothing is.</summary>
    /// <param name="share">Of a deterministic limit.</param>
    public Draft? Settle(MealModel model, TimeSpan time, double share) =>
        Aside(model, "", time, share, (solver, status) => status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? Draft.Read(model, solver) : null);

    /// <summary>Beside the search for the plan: one worker, and nobody is told.</summary>
    private T Aside<T>(MealModel model, string lines, TimeSpan time, double share, Func<CpSolver, CpSolverStatus, T> read)
    {
        using var solver = new CpSolver { StringParameters = Limited($"{lines} num_workers:1", time, share) };
        using (new Timer(_ => StopWhere(solver, IsStopped), null, Poll, Poll))
        {
            return read(solver, solver.Solve(model.Cp));
        }
    }

    private static long Bound(double found) => (long)Math.Ceiling(Math.Max(0, found) - 1e-6);

    private string Parameters(TimeSpan time, double share, bool proves, bool isLatenessOnly) =>
        Limited(Lines(proves, isLatenessOnly) + $" num_workers:{limits.Workers}", time, share);

    private string Limited(string lines, TimeSpan time, double share)
    {
        var seconds = Math.Max(0.02, time.TotalSeconds).ToString(CultureInfo.InvariantCulture);
        var parameters = $"{lines} max_time_in_seconds:{seconds} random_seed:{limits.Seed}";
        return limits.Deterministic is { } effort
            ? parameters + $" max_deterministic_time:{(effort * share).ToString(CultureInfo.InvariantCulture)}"
            : parameters;
    }

    /// <summary>
    /// The solver gives one of two workers a line of search, and the other to trying neighbours of what was found. With relaxations
    /// the line proves; without them it finds more in little time.
    /// </summary>
    private string Lines(bool proves, bool isLatenessOnly) => limits.Workers switch
    {
        1 => isLatenessOnly ? "linearization_level:0" : "linearization_level:2",
        2 => proves ? """subsolver_params:{name:"proof" linearization_level:2} subsolvers:"proof" """ : """subsolvers:"no_lp" """,
        _ => "",
    };

    private sealed class Told(MealModel model, Stopwatch watch, Action<PlanProgress>? tell, Action<Answer>? found) : CpSolverSolutionCallback
    {
        private TimeSpan nextAnswer;

        /// <summary>When the first answer of this solve was found.</summary>
        public TimeSpan? First { get; private set; }

        /// <summary>As it was when the last answer was found.</summary>
        public double Gap { get; private set; } = 1;

        public ExceptionDispatchInfo? Failure { get; private set; }

        public override void OnSolutionCallback()
        {
            First ??= watch.Elapsed;
            Gap = Answer.GapOf((long)Math.Round(ObjectiveValue()), (long)BestObjectiveBound());
            if ((tell is null && found is null) || Failure is not null)
            {
                return;
            }

            // An exception must not unwind through the native solver: it is kept and thrown after the search.
            try
            {
                var objective = (long)Math.Round(ObjectiveValue());
                var late = model.OpenTables.Select(open => (int)SolutionIntegerValue(open.Table.Index) - open.Promised).Append(0).Max();
                tell?.Invoke(new PlanProgress(watch.Elapsed, objective, Answer.GapOf(objective, (long)BestObjectiveBound()), late));
                if (found is not null && watch.Elapsed >= nextAnswer)
                {
                    found(new Answer(Draft.Read(model, this), objective, Search.Bound(BestObjectiveBound()), IsImpossible: false));
                    nextAnswer = watch.Elapsed + BetweenAnswers;
                }
            }
            catch (Exception failure)
            {
                Failure = ExceptionDispatchInfo.Capture(failure);
                StopSearch();
            }
        }
    }
}

/// <param name="Found">Null where nothing was.</param>
/// <param name="Bound">No plan of this model is cheaper.</param>
/// <param name="IsImpossible">Proven that there is none.</param>
internal sealed record Answer(Draft? Found, long Objective, long Bound, bool IsImpossible)
{
    public bool IsProven => Found is not null && Objective <= Bound;

    /// <summary>The cheaper of the two, with what both have proved.</summary>
    public Answer Or(Answer other) =>
        (other.Found is not null && other.Objective < Objective ? other : this) with { Bound = Math.Max(Bound, other.Bound) };

    public static double GapOf(long objective, long bound) =>
        objective <= bound ? 0 : Math.Clamp((objective - bound) / (double)Math.Max(1, objective), 0, 1);
}
