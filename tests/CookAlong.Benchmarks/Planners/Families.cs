using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Benchmarks.Planners;

/// <summary>
/// Invented meals of a size, always the same for a seed: roasts that rest, bakes, boils, braises of the day before, cold dishes. "Full" is what a
/// household cooks for twelve (12 dishes, about 85 steps, one oven); "large" what a hall does (28 dishes, about 195, two). Each dish has
/// several things to begin with and one last step, as 15 of the 16 task graphs of recipes in CaptainCook4D have.
/// </summary>
sealed class Families
{
    static readonly Minute Table = Minute.Of(new DateTimeOffset(2031, 2, 8, 14, 0, 0, TimeSpan.Zero));
    static readonly CelsiusRange[] Heats = [new(150, 160, 170), new(170, 180, 190), new(175, 185, 200), new(190, 200, 210), new(210, 220, 230)];

    readonly Random random;

    Families(int seed) => random = new Random(seed);

    public static Meal Full(int seed, int helpers) => new Families(seed).Meal(dishes: 12, ovens: 1, rings: 4, helpers);

    public static Meal Large(int seed) => new Families(seed).Meal(dishes: 28, ovens: 2, rings: 8, helpers: 4);

    Meal Meal(int dishes, int ovens, int rings, int helpers) => new(
        "A family of meals",
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
        [.. Enumerable.Range(0, dishes).Select(Dish)]);

    Dish Dish(int number)
    {
        var (id, steps) = ($"d{number}", new List<Step>());
        void Add(int minutes, Attention attention, Uses? uses = null, int least = 0, int? most = null, int? baste = null)
        {
            After[] after = steps.Count == 0 ? [] : [new After(steps[^1].Id, least, most)];
            var way = new Way(new Durations(Math.Max(1, minutes * 4 / 5), minutes, minutes * 3 / 2), attention, 1, uses ?? Uses.Nothing);
            steps.Add(new Step(
                new($"{id}-{steps.Count}"), $"Step {steps.Count}", null, null, way, [], [], ChildSafe: false, [.. after],
                baste is { } every ? [new Tend("Baste", 1, every, null, 5, false)] : [], null, null, [], null, PauseAfter: false));
        }

        Uses Ring() => Uses.Nothing with { Rings = 1 };
        Uses Inside(int shelves = 1) => Uses.Nothing with { Oven = new(null, shelves, Heats[random.Next(Heats.Length)]) };
        var wait = new Hold(HoldPlace.Table, 0, 5, 15, 25, 3, null);
        switch (number % 6)
        {
            case 0: // a roast that rests
                Add(random.Next(8, 20), Attention.HandsOn);
                Add(random.Next(60, 110), Attention.Nearby, Inside(), most: 60, baste: 30);
                Add(5, Attention.HandsOn, most: 5);
                Add(random.Next(15, 30), Attention.Unattended, most: 2);
                Add(random.Next(6, 14), Attention.HandsOn, most: 20);
                wait = new Hold(HoldPlace.Covered, 0, 8, 15, 20, 4, null);
                break;
            case 1 or 4: // vegetables peeled, cut, roasted
                Add(random.Next(6, 18), Attention.HandsOn);
                Add(random.Next(4, 10), Attention.HandsOn, most: 240);
                Add(random.Next(3, 6), Attention.HandsOn, most: 120);
                Add(random.Next(25, 50), Attention.Unattended, Inside(), most: 20);
                Add(3, Attention.HandsOn, most: 4);
                break;
            case 2: // boiled, drained, dressed
                Add(random.Next(5, 15), Attention.HandsOn);
                Add(random.Next(8, 14), Attention.Unattended, Ring(), most: 180);
                Add(random.Next(5, 20), Attention.Nearby, Ring(), most: 3);
                Add(3, Attention.HandsOn, most: 2);
                Add(random.Next(2, 6), Attention.HandsOn, most: 10);
                wait = new Hold(HoldPlace.Covered, 0, 4, 10, 15, 4, null);
                break;
            case 3: // braised ahead and warmed
                Add(random.Next(10, 20), Attention.HandsOn);
                Add(random.Next(60, 120), Attention.Nearby, Ring(), most: 60, baste: 40);
                Add(60, Attention.Unattended, most: 30);
                Add(random.Next(12, 20), Attention.Nearby, Ring(), most: 1380);
                Add(4, Attention.HandsOn, most: 10);
                wait = new Hold(HoldPlace.Covered, 0, 20, 40, 60, 1, null);
                break;
            default: // mixed, baked or grilled, sauced
                Add(random.Next(5, 12), Attention.HandsOn);
                Add(random.Next(4, 10), Attention.HandsOn, Uses.Nothing with { Appliances = [new("mixer")] }, most: 120);
                Add(random.Next(10, 25), Attention.Unattended, most: 30);
                Add(random.Next(5, 10), Attention.HandsOn, most: 60);
                Add(random.Next(20, 40), Attention.Unattended, Inside(), most: 90);
                Add(random.Next(3, 8), Attention.HandsOn, most: 15);
                Add(random.Next(3, 6), Attention.HandsOn, Ring(), most: 20);
                wait = new Hold(HoldPlace.Side, 0, 10, 20, 35, 2, null);
                break;
        }

        var last = steps.Count - 1;
        while (steps.Count < 7)
        {
            // Something small that the last step wants: herbs, a garnish, a board laid ready.
            Add(random.Next(3, 9), Attention.HandsOn);
            steps[^1] = steps[^1] with { After = [] };
            steps[last] = steps[last] with { After = [.. steps[last].After, new After(steps[^1].Id, 0, null)] };
        }

        return new Dish(new(id), $"Dish {number}", new("main"), 8, [], [wait with { Limit = Math.Max(wait.Limit, 240) }], [.. steps]);
    }
}
