using CookAlong.Domain.Planning;

namespace CookAlong.Benchmarks.Planners;

/// <summary>Hears of each better plan.</summary>
sealed class Heard(Action<PlanProgress> hear) : IProgress<PlanProgress>
{
    public void Report(PlanProgress value) => hear(value);
}
