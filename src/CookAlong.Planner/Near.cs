using CookAlong.Domain;

namespace CookAlong.Planner;

/// <summary>Keeps every start within <paramref name="Minutes"/> of an earlier answer.</summary>
internal sealed record Near(IReadOnlyDictionary<StepId, int> Starts, int Minutes);
