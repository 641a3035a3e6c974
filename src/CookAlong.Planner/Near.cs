using CookAlong.Domain;

namespace CookAlong.Planner;

/// <summary>Keeps every start within <paramref name="Minutes"/> of an earlier answer, but for the steps that are free.</summary>
internal sealed record Near(IReadOnlyDictionary<StepId, int> Starts, int Minutes, IReadOnlySet<StepId>? Free = null)
{
    public int? Of(StepId step) => Free?.Contains(step) != true && Starts.TryGetValue(step, out var at) ? at : null;
}
