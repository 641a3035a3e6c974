using System.Diagnostics;
using System.Globalization;
using System.Runtime.ExceptionServices;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>One plan's searching: its limits, the time it has left, who is told and who may stop it.</summary>
internal sealed class Search(PlanLimits limits, IProgress<PlanProgress>? progress, CancellationToken stop)
{
    private static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(10);
    private readonly Stopwatch watch = Stopwatch.StartNew();

    public TimeSpan Elapsed => watch.Elapsed;

    public TimeSpan Left => limits.Time - watch.Elapsed;

    public bool IsStopped => stop.IsCancellationRequested;

    public PlanLimits Limits => limits;

    /// <param name="time">The longest this solve may take.</param>
    /// <param name="giveUp">Stop this early while nothing has been found; no meaning where the limit is deterministic.</param>
    /// <param name="share">Of a deterministic limit, 0 to 1.</param>
    /// <param name="heedStop">False for the short work that turns the best so far into a plan.</param>
    public Answer Solve(MealModel model, TimeSpan time, TimeSpan giveUp, double share, bool heedStop = true)
    {
        if (heedStop && IsStopped)
        {
            return new Answer(null, 0, 0, IsImpossible: false);
        }

        using var solver = new CpSolver { StringParameters = Parameters(time, share) };
        using var told = new Told(model, watch, progress);
        var begun = watch.Elapsed;

        // Asking the solver to stop before it has set up is lost on it, so the question is put again and again.
        using (new Timer(_ => StopWhere((heedStop && IsStopped) || (limits.Deterministic is null && told.Count == 0 && watch.Elapsed - begun > giveUp)), null, Poll, Poll))
        {
            solver.Solve(model.Cp, told);
        }

        told.Failure?.Throw();
        var status = solver.Response!.Status;
        return status switch
        {
            CpSolverStatus.Optimal or CpSolverStatus.Feasible =>
                new Answer(Draft.Read(model, solver), (long)Math.Round(solver.ObjectiveValue), Bound(solver), IsImpossible: false),
            CpSolverStatus.Infeasible => new Answer(null, 0, 0, IsImpossible: true),
            CpSolverStatus.Unknown => new Answer(null, 0, 0, IsImpossible: false),
            CpSolverStatus.ModelInvalid => throw new InvalidOperationException($"The planner made a model that is none: {model.Cp.Validate()}"),
            _ => throw new UnreachableException($"solver status {status}"),
        };

        void StopWhere(bool isTime)
        {
            if (isTime)
            {
                solver.StopSearch();
            }
        }
    }

    private static long Bound(CpSolver solver) => (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6);

    private string Parameters(TimeSpan time, double share)
    {
        var seconds = Math.Max(0.02, time.TotalSeconds).ToString(CultureInfo.InvariantCulture);
        var parameters = $"max_time_in_seconds:{seconds} num_workers:{limits.Workers} random_seed:{limits.Seed}";
        return limits.Deterministic is { } effort
            ? parameters + $" max_deterministic_time:{(effort * share).ToString(CultureInfo.InvariantCulture)}"
            : parameters;
    }

    private sealed class Told(MealModel model, Stopwatch watch, IProgress<PlanProgress>? progress) : SolutionCallback
    {
        public int Count { get; private set; }

        public ExceptionDispatchInfo? Failure { get; private set; }

        public override void OnSolutionCallback()
        {
            Count++;
            if (progress is null || Failure is not null)
            {
                return;
            }

            // An exception must not unwind through the native solver: it is kept and thrown after the search.
            try
            {
                var objective = (long)Math.Round(ObjectiveValue());
                var late = model.OpenTables.Select(open => (int)SolutionIntegerValue(open.Table.Index) - open.Promised).Append(0).Max();
                progress.Report(new PlanProgress(watch.Elapsed, objective, Answer.GapOf(objective, (long)BestObjectiveBound()), late));
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
    public static double GapOf(long objective, long bound) =>
        objective <= bound ? 0 : Math.Clamp((objective - bound) / (double)Math.Max(1, objective), 0, 1);
}
