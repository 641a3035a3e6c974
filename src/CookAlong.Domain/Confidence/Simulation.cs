using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Confidence;

/// <summary>Cooks the plan many times over with uncertain durations.</summary>
public static class Simulation
{
    /// <param name="runs">1 to 1,000,000.</param>
    /// <param name="seed">The same seed gives the same answer.</param>
    public static Planning.Confidence Run(Meal meal, Plan plan, int runs, int seed) => throw new NotImplementedException();
}
