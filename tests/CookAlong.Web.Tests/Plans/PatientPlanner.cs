using CookAlong.Domain.Planning;

namespace CookAlong.Web.Tests.Plans;

/// <summary>Finds the hand-made plan, and looks for better ones until it is stopped or let go.</summary>
sealed class PatientPlanner : IMealPlanner, IDisposable
{
    readonly TaskCompletionSource begun = new(TaskCreationOptions.RunContinuationsAsynchronously);
    readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    readonly ManualResetEventSlim letGo = new();
    IProgress<PlanProgress>? listener;

    public Plan? Previous { get; private set; }

    public CookAlong.Domain.Meals.Meal? Meal { get; private set; }

    public int Cushion { get; private set; }

    public Leans Leans { get; private set; }

    public Plan Next { get; set; } = AlderLane.Plan;

    public Task Begun => begun.Task;

    public Task Ended => ended.Task;

    public void LetGo() => letGo.Set();

    /// <summary>Until it is let go again.</summary>
    public void Hold() => letGo.Reset();

    public void Dispose() => letGo.Dispose();

    public void Tell(PlanProgress better) => listener!.Report(better);

    public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default)
    {
        listener = progress;
        (Previous, Meal, Cushion, Leans) = (request.Previous, request.Meal, request.Cushion, request.Leans);
        begun.TrySetResult();
        WaitHandle.WaitAny([letGo.WaitHandle, stop.WaitHandle]);
        ended.TrySetResult();
        return Next;
    }
}
