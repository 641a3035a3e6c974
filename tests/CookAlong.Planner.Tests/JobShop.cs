using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>A job shop as a meal: each job a dish, each machine an appliance, nobody's hands wanted.</summary>
internal static class JobShop
{
    /// <param name="jobs">A job a row: machine and duration of each operation in turn; machines are numbered from 0, each is in every row.</param>
    /// <param name="waits">How long a job that is done may wait for nothing, in minutes.</param>
    public static Meal Of(int[][] jobs, int minutes, int waits)
    {
        var machines = Enumerable.Range(0, jobs[0].Length / 2).Select(machine => new Appliance(new ApplianceId($"machine-{machine}"), 1));
        var dishes = jobs.Select((row, job) => Dish(
            $"job-{job}",
            OnTheSide(limit: waits, bestWithin: waits),
            [.. row.Chunk(2).Select((operation, index) => Alone($"job-{job}-{index}", operation[1], With($"machine-{operation[0]}")))]));
        return Meal(minutes, new Kitchen([], 0, [], [.. machines]), [Cook("cook")], [.. dishes]);
    }
}
