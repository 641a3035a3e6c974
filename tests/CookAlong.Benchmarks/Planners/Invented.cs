using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Benchmarks.Planners;

/// <summary>Steps of an invented dish as they are added, each after the one before.</summary>
sealed class Invented(int number)
{
    /// <summary>Steps of every dish.</summary>
    const int Steps = 7;

    static readonly Minute Table = Minute.Of(new DateTimeOffset(2031, 2, 8, 14, 0, 0, TimeSpan.Zero));

    readonly List<Step> steps = [];

    public void Add(int minutes, Attention attention, Uses? uses = null, int? most = null, int? tended = null)
    {
        After[] after = steps.Count == 0 ? [] : [new After(steps[^1].Id, 0, most)];
        var way = new Way(new Durations(Math.Max(1, minutes * 4 / 5), minutes, minutes * 3 / 2), attention, 1, uses ?? Uses.Nothing);
        steps.Add(new Step(
            new($"d{number}-{steps.Count}"), $"Step {steps.Count}", null, null, way, [], [], ChildSafe: false, [.. after],
            tended is { } every ? [new Tend("Baste", 1, every, null, 5, false)] : [], null, null, [], null, PauseAfter: false));
    }

    /// <summary>With as many small things that the last step wants (herbs, a garnish, a board laid ready) as make it a dish of seven steps.</summary>
    public Dish Dish(Hold wait, Random random)
    {
        var last = steps.Count - 1;
        while (steps.Count < Steps)
        {
            Add(random.Next(3, 9), Attention.HandsOn);
            steps[^1] = steps[^1] with { After = [] };
            steps[last] = steps[last] with { After = [.. steps[last].After, new After(steps[^1].Id, 0, null)] };
        }

        return new Dish(new($"d{number}"), $"Dish {number}", new("main"), 8, [], [wait with { Limit = Math.Max(wait.Limit, 240) }], [.. steps]);
    }

    public static Meal Meal(IEnumerable<Dish> dishes, int ovens, int rings, int helpers) => new(
        "An invented meal",
        TimeZoneInfo.Utc,
        Table - 1440,
        [new Course(new("main"), "Main", Table)],
        [],
        new Kitchen(
            [.. Enumerable.Range(1, ovens).Select(number => new Oven(new($"oven-{number}"), $"Oven {number}", 3, false, 50, 250, 12, 10, 20))],
            rings,
            [new Grill(new("grill"), null)],
            [new Appliance(new("mixer"), 1)]),
        [.. Enumerable.Range(1, helpers).Select(number => new Helper(new($"cook-{number}"), $"Cook {number}", [], null, IsChild: false))],
        [.. dishes]);
}
