using System.Collections.Immutable;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>Six cooks with a job each that is due at once, and a table time far off: every tap is possible and every step taken back calls anew.</summary>
static class ManyDue
{
    public const int Jobs = 6;
    const int Length = 20;

    public static StepId Job(int number) => new(string.Create(CultureInfo.InvariantCulture, $"job-{number}"));

    public static (Meal Meal, Plan Plan) Meal(DateTimeOffset now)
    {
        var begins = Minute.Of(now) - 1;
        var table = begins + (12 * 60);
        var course = new CourseId("main");
        var numbers = Enumerable.Range(0, Jobs).ToImmutableArray();
        var meal = new Meal(
            "Many jobs", TimeZoneInfo.Utc, begins, [new Course(course, "Main", table)], [],
            new Kitchen([], 4, [], []),
            [.. numbers.Select(number => new Helper(Cook(number), number == 0 ? "Maren" : $"Cook {number}", [], null, false))],
            [.. numbers.Select(number => new Dish(new DishId($"dish-{number}"), $"Dish {number}", course, 4, [], [new Hold(HoldPlace.Side, 0, 600, 700, 800, 1, null)], [StepOf(number)]))]);
        var plan = new Plan(
            PlanStatus.Feasible, 0, 1, begins, [new PlannedCourse(course, table, table)],
            [.. numbers.Select(number => new PlannedStep(Job(number), begins, begins + Length, -1, [Cook(number)], null, null, [], 600))],
            [],
            [.. numbers.Select(number => new PlannedHold(new DishId($"dish-{number}"), 0, HoldPlace.Side, begins + Length, table, null))],
            [], new PlanCost(0, 0, Length, 0, 0), null, []);
        return (meal, plan);
    }

    static HelperId Cook(int number) => new($"cook-{number}");

    static Step StepOf(int number) => new(
        Job(number), $"Job {number}", null, null, new Way(Durations.Exactly(Length), Attention.HandsOn, 1, Uses.Nothing), [], [], true, [], [], null, null, [], null, false);
}
