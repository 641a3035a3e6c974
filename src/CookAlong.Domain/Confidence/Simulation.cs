using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Confidence;

/// <summary>Cooks the plan many times over with uncertain durations.</summary>
public static class Simulation
{
    /// <summary>How late a course may come and still count as on time, in minutes.</summary>
    const double OnTime = 10;

    const int MostDecisive = 5;

    /// <param name="runs">1 to 1,000,000.</param>
    /// <param name="seed">The same seed gives the same answer.</param>
    public static Planning.Confidence Run(Meal meal, Plan plan, int runs, int seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(runs, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(runs, 1_000_000);
        var kitchen = new SimulatedKitchen(meal, plan);
        var dice = new Dice(unchecked((ulong)seed));
        var (onTime, lateMinutes) = (0, 0.0);
        var heldUp = new double[kitchen.Entries.Length];
        for (var run = 0; run < runs; run++)
        {
            var late = kitchen.Cook(ref dice);
            lateMinutes += late;
            if (late <= OnTime)
            {
                onTime++;
            }
            else
            {
                kitchen.ChargeWhatHeldUp(heldUp);
            }
        }

        var decisive = kitchen.Entries.Zip(heldUp).Where(one => one.Second > 0).OrderByDescending(one => one.Second).Take(MostDecisive);
        return new((double)onTime / runs, lateMinutes / runs, [.. decisive.Select(one => one.First.Step!.Step)]);
    }
}
