using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>
/// ft06: H. Fisher, G.L. Thompson, "Probabilistic learning combinations of local job-shop scheduling rules", in: Industrial
/// Scheduling, Prentice Hall 1963. Its shortest makespan is 55. Here each job is a dish and each machine an appliance.
/// </summary>
public sealed class JobShopTests
{
    private const int Optimum = 55;

    /// <summary>A job a row: machine and duration of each operation in turn.</summary>
    private static readonly int[][] Jobs =
    [
        [2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6],
        [1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4],
        [2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7],
        [1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9],
        [2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1],
        [1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1],
    ];

    [Fact]
    public void Ft06_is_on_time_when_it_has_its_shortest_makespan()
    {
        var plan = Plan(Ft06(Optimum));

        Assert.Equal((PlanStatus.Optimal, 0), (plan.Status, plan.Cost.LateMinutes));
    }

    [Fact]
    public void Ft06_is_a_minute_late_when_it_has_a_minute_less()
    {
        var plan = Plan(Ft06(Optimum - 1));

        Assert.Equal((PlanStatus.Optimal, 1), (plan.Status, plan.Cost.LateMinutes));
    }

    private static Meal Ft06(int minutes) => JobShop.Of(Jobs, minutes, waits: 60);
}
