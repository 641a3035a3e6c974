using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Confidence;

/// <summary>Cooks the plan many times over with uncertain durations.</summary>
public static class Simulation
{
    /// <param name="runs">Days cooked, 1 to 1,000,000.</param>
    /// <param name="seed">The same seed gives the same answer; plans of one meal are tried on the same days.</param>
    /// <param name="allowance">Minutes that anything may begin before its planned start, where what it waits for is done. 0 or more.</param>
    /// <param name="cores">How many share the work; null = all there are. The answer does not depend on it.</param>
    public static Planning.Confidence Run(Meal meal, Plan plan, int runs, int seed, int allowance = 0, int? cores = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(runs, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(runs, 1_000_000);
        ArgumentOutOfRangeException.ThrowIfNegative(allowance);
        var kitchen = new SimulatedKitchen(meal, plan, allowance);
        var cooking = new ManyDays(kitchen, new Luck(seed), runs, new ParallelOptions { MaxDegreeOfParallelism = cores ?? -1 });
        var decisive = cooking.Decisive();
        return new((double)cooking.OnTime / runs, cooking.LateMinutes / runs, [.. decisive.Select(one => one.Step)])
        {
            Decisive = decisive,
            TooLong = (double)cooking.TooLongDays / runs,
            Standing = cooking.Standing(),
            Tables = [.. kitchen.Tables.Select((table, at) => new TableSpread(kitchen.Entries[table.Entry].Course!.Course, cooking.TwentyDays(at)))],
        };
    }
}
