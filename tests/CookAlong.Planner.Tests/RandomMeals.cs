using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

/// <summary>Small meals that between them use every rule. The same seed gives the same meal.</summary>
/// <param name="seed">Any.</param>
/// <param name="mostSteps">1 or more.</param>
/// <param name="scale">How long a minute of the smallest meal is: 1 keeps everything within about ten minutes.</param>
internal sealed class RandomMeals(int seed, int mostSteps, int scale = 1)
{
    private static readonly string[] Skills = ["knife", "hot"];
    private readonly Random random = new(seed);

    public Meal Next()
    {
        var before = (6 + random.Next(5)) * scale;
        var steps = 1 + random.Next(mostSteps);
        var courses = new List<Course> { new(Main, "Main", Table) };
        if (Maybe(4))
        {
            courses.Add(new Course(new CourseId("sweet"), "Sweet", Table + (1 + random.Next(3)) * scale));
        }

        var kitchen = NextKitchen();
        var helpers = Enumerable.Range(1, 1 + random.Next(3)).Select(number => NextHelper(number, before)).ToList();
        var dishes = new List<Dish>();
        var made = new List<Step>();
        while (made.Count < steps)
        {
            var number = dishes.Count + 1;
            var own = Enumerable.Range(1, Math.Min(steps - made.Count, 1 + random.Next(3))).Select(_ => NextStep($"s{number}{_}", kitchen, helpers, before)).ToArray();
            var dish = Dish($"d{number}", [.. Enumerable.Range(0, 1 + random.Next(2)).Select(_ => NextHold())], own);
            dish = dish with { Course = courses[random.Next(courses.Count)].Id, Steps = [.. dish.Steps.Select(step => Wait(step, made))] };
            dishes.Add(dish);
            made.AddRange(dish.Steps);
        }

        return Meal(before, kitchen, helpers, [.. dishes]) with { Courses = [.. courses] };
    }

    private bool Maybe(int oneIn) => random.Next(oneIn) == 0;

    private int Minutes(int least, int most) => scale * random.Next(least, most + 1);

    private Kitchen NextKitchen()
    {
        decimal[] rates = [12.5m, 20, 30.3m, 45, 7.5m];
        var ovens = Enumerable.Range(1, 1 + random.Next(2)).Select(number => new Oven(
            new OvenId($"oven-{number}"), "", 1 + random.Next(2), false, 30, 120,
            rates[random.Next(rates.Length)] / scale, rates[random.Next(rates.Length)] / scale, 20)).ToList();
        var inside = Maybe(2) ? ovens[0].Id : (OvenId?)null;
        return new Kitchen([.. ovens], 1 + random.Next(2), [new Grill(new GrillId("grill"), inside)], [new Appliance(new ApplianceId("mixer"), 1)]);
    }

    private Helper NextHelper(int number, int before)
    {
        var helper = Cook($"h{number}", isChild: number > 1 && Maybe(3));
        if (Maybe(3))
        {
            helper = helper with { Can = [Skills[random.Next(2)]] };
        }

        if (Maybe(3))
        {
            var seam = Table - before + Minutes(1, 6);
            helper = helper with { Available = Maybe(2) ? [new Window(seam, Table + 400)] : [new Window(Table - before, seam), new Window(seam + Minutes(1, 2), Table + 400)] };
        }

        return helper;
    }

    private Step NextStep(string id, Kitchen kitchen, List<Helper> helpers, int before)
    {
        var way = NextWay(kitchen);
        var step = Alone(id, 1) with { Way = way, ChildSafe = Maybe(2), Needs = Maybe(4) ? [Skills[random.Next(2)]] : [] };
        if (Maybe(4))
        {
            step = step with { Options = [NextWay(kitchen)], Choice = Maybe(4) ? random.Next(2) - 1 : null };
        }

        if (Maybe(4))
        {
            step = step with { Tends = [new Tend("Turn", 1, Maybe(2) ? 1 + random.Next(2 * scale) : null, null, random.Next(2), Maybe(2))] };
            step = step with { Tends = [step.Tends[0] with { At = step.Tends[0].Every is null ? random.Next(-2, 2) : null }] };
        }

        return random.Next(12) switch
        {
            0 => step with { At = Table - Minutes(1, 6) },
            1 or 2 => step with { Window = new Window(Table - Minutes(4, 8), Table - random.Next(3)) },
            3 or 4 => step with { By = [helpers[random.Next(helpers.Count)].Id] },
            5 => step with { By = [.. helpers.Take(2).Select(helper => helper.Id)] },
            _ => step,
        };
    }

    private Way NextWay(Kitchen kitchen)
    {
        (int Min, int Max)[] ranges = [(40, 60), (50, 80), (90, 110), (100, 140), (25, 45)];
        var range = ranges[random.Next(ranges.Length)];
        var uses = random.Next(8) switch
        {
            0 or 1 or 2 => InOven(range.Min, range.Max, 1 + random.Next(2), Maybe(3) ? kitchen.Ovens[0].Id : null),
            3 => OnRings(1 + random.Next(2)),
            4 => UnderGrill(Maybe(2) ? kitchen.Grills[0].Id : null),
            5 => With("mixer"),
            _ => Uses.Nothing,
        };
        var attention = (Attention)random.Next(3);
        return Way(Minutes(1, 3), attention, uses, Maybe(4) ? 2 : 1);
    }

    private Hold NextHold() => random.Next(3) switch
    {
        0 => new Hold(HoldPlace.WarmOven, random.Next(2), 1, 2, Minutes(2, 5), random.Next(3), new WarmOven(new CelsiusRange(30, 35, 50), 1, Minutes(0, 2))),
        1 => new Hold(HoldPlace.Side, Minutes(0, 2), Minutes(0, 1), Minutes(1, 2), Minutes(3, 6), 1 + random.Next(3), null),
        _ => new Hold(HoldPlace.Table, 0, 1, 2, Minutes(2, 4), random.Next(3), null),
    };

    private Step Wait(Step step, List<Step> made) => made.Count > 0 && Maybe(4)
        ? step with { After = [.. step.After, new After(made[random.Next(made.Count)].Id, Minutes(0, 1), Maybe(2) ? Minutes(1, 3) : null)] }
        : step with { After = [.. step.After.Select(after => after with { Most = Maybe(3) ? Minutes(0, 2) : null })] };
}
