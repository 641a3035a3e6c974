using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Web.Features.Plans;

/// <summary>
/// Plans a boiled egg: loading the solver takes a while, which the first who plans need not wait for. Not before the server
/// has answered for a moment, or the first page would wait for the egg instead.
/// </summary>
sealed class WarmSolver(IHostApplicationLifetime server, TimeProvider clock) : BackgroundService
{
    static readonly TimeSpan AfterStart = TimeSpan.FromSeconds(5);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Delay(Timeout.InfiniteTimeSpan, clock, server.ApplicationStarted).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await Task.Delay(AfterStart, clock, stoppingToken);
        MealPlanners.ForThisMachine().Plan(new PlanRequest(Egg(Minute.Of(clock.GetUtcNow())), new PlanLimits(TimeSpan.FromSeconds(1), Workers: 1)), stop: stoppingToken);
        SpareMemory.GiveBack();
    }

    static Meal Egg(Minute now)
    {
        var way = new Way(Durations.Exactly(7), Attention.HandsOn, People: 1, new Uses(null, Rings: 1, null, []));
        var boil = new Step(new("boil"), "Boil the egg", null, null, way, [], [], ChildSafe: false, [], [], null, null, [], null, PauseAfter: false);
        var course = new Course(new("breakfast"), "Breakfast", now + 60);
        return new Meal(
            "Breakfast",
            TimeZoneInfo.Utc,
            now,
            [course],
            [],
            new Kitchen([], Rings: 1, [], []),
            [new Helper(new("cook"), "Cook", [], null, IsChild: false)],
            [new Dish(new("egg"), "Egg", course.Id, 1, [], [Hold.OnTheTable], [boil])]);
    }
}
