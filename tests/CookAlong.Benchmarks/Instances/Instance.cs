using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Benchmarks.Instances;

/// <summary>A published scheduling problem: tasks with lengths, what each waits for, and how much it takes of each resource.</summary>
/// <param name="Best">The shortest makespan known; 0 = not known.</param>
/// <param name="Minutes">Per task, 1 or more, in the instance's own unit.</param>
/// <param name="Before">Per task: the tasks that must have ended.</param>
/// <param name="Needs">Per task: of each resource so much, 0 or more.</param>
/// <param name="Capacity">Per resource.</param>
/// <param name="Hands">The only resource is people, and every task is hands-on.</param>
sealed record Instance(string Name, int Best, int[] Minutes, int[][] Before, int[][] Needs, int[] Capacity, bool Hands = false)
{
    static readonly Minute Table = Minute.Of(new DateTimeOffset(2031, 2, 8, 14, 0, 0, TimeSpan.Zero));

    /// <summary>Tasks so that each comes after those it waits for.</summary>
    public int[] InOrder { get; } = Sorted(Before);

    /// <summary>The longest chain of tasks.</summary>
    public int CriticalPath => Heads().Zip(Minutes, (head, minutes) => head + minutes).Max();

    /// <summary>No schedule is shorter: the longest chain, or what comes before, on and after a resource at the least.</summary>
    public int Bound
    {
        get
        {
            var (heads, tails) = (Heads(), Tails());
            return Enumerable.Range(0, Capacity.Length).Select(resource =>
            {
                var users = Enumerable.Range(0, Minutes.Length).Where(task => Needs[task][resource] > 0).ToList();
                var work = users.Sum(task => Minutes[task] * Needs[task][resource]);
                return users.Select(task => heads[task]).DefaultIfEmpty(0).Min() + ((work + Capacity[resource] - 1) / Capacity[resource]) + users.Select(task => tails[task]).DefaultIfEmpty(0).Min();
            }).Append(CriticalPath).Max();
        }
    }

    /// <summary>Per task: the longest chain before it.</summary>
    int[] Heads()
    {
        var heads = new int[Minutes.Length];
        foreach (var task in InOrder)
        {
            heads[task] = Before[task].Select(before => heads[before] + Minutes[before]).Append(0).Max();
        }

        return heads;
    }

    /// <summary>Per task: the longest chain after it.</summary>
    public int[] Tails()
    {
        var tails = new int[Minutes.Length];
        foreach (var task in InOrder.Reverse())
        {
            foreach (var before in Before[task])
            {
                tails[before] = Math.Max(tails[before], tails[task] + Minutes[task]);
            }
        }

        return tails;
    }

    /// <summary>
    /// The same as one dish that keeps as long as it likes: resources are appliances (or cooks), the promised table is
    /// <see cref="Bound"/> minutes after the first minute, so that minutes late are the makespan beyond it.
    /// </summary>
    public Meal Meal()
    {
        var dish = new DishId("all");
        StepId Id(int task) => new($"t{task}");
        var wait = new Hold(HoldPlace.Side, Least: 0, BestWithin: 100_000, GoodFor: 100_000, Limit: 100_000, CostPerMinute: 0, null);
        var steps = Minutes.Select((minutes, task) => new Step(
            Id(task), $"Task {task}", null, null,
            new Way(Durations.Exactly(minutes), Hands ? Attention.HandsOn : Attention.Unattended, 1, Hands ? Uses.Nothing : Uses.Nothing with { Appliances = [.. Taken(task)] }),
            [], [], ChildSafe: false, [.. Before[task].Select(before => new After(Id(before), 0, null))], [], null, null, [], null, PauseAfter: false));
        // Nobody sleeps in a machine shop.
        ImmutableArray<Window> dayAndNight = [new(Table - Bound, Table + 100_000)];
        return new Meal(
            Name, TimeZoneInfo.Utc, Table - Bound, [new Course(new("main"), "Main", Table)], [],
            new Kitchen([], 0, [], Hands ? [] : [.. Capacity.Select((count, resource) => new Appliance(Resource(resource), count))]),
            [.. Enumerable.Range(0, Hands ? Capacity[0] : 0).Select(cook => new Helper(new($"cook-{cook}"), $"Cook {cook}", dayAndNight, null, IsChild: false))],
            [new Dish(dish, "All", new("main"), 1, [], [wait], [.. steps])]);
    }

    static ApplianceId Resource(int resource) => new($"r{resource}");

    IEnumerable<ApplianceId> Taken(int task) => Needs[task].SelectMany((amount, resource) => Enumerable.Repeat(Resource(resource), amount));

    static int[] Sorted(int[][] before)
    {
        var (sorted, left) = (new List<int>(), Enumerable.Range(0, before.Length).ToList());
        while (left.Count > 0)
        {
            var next = left.Where(task => before[task].All(sorted.Contains)).ToList();
            sorted.AddRange(next.Count > 0 ? next : throw new InvalidDataException("Tasks wait for each other in a circle."));
            left.RemoveAll(next.Contains);
        }

        return [.. sorted];
    }
}
