using CookAlong.Domain.Planning;

namespace CookAlong.Benchmarks.Planners;

/// <summary>Acts whenever a better plan is told of.</summary>
sealed class FirstTold(Action act) : IProgress<PlanProgress>
{
    public void Report(PlanProgress value) => act();
}
