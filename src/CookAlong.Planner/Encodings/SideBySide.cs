using CookAlong.Domain;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>
/// Steps of which no two can be done side by side, because of one thing here and of another there: each thing's own limit sees
/// only its own pairs. Says nothing new, but lets the solver put such steps in order, and proves more for it.
/// </summary>
internal static class SideBySide
{
    public static void Add(MealModel model)
    {
        var (kitchen, steps) = (model.Meal.Kitchen, model.Steps.Values.Where(step => !step.HasBegun && step.Ways.Length == 1).ToArray());
        List<(int[] Taken, int Most)> things = [(Array.ConvertAll(steps, step => step.Ways[0].Way.Uses.Rings), kitchen.Rings)];
        foreach (var thing in kitchen.Appliances)
        {
            things.Add((Array.ConvertAll(steps, step => step.Ways[0].Way.Uses.Appliances.Count(used => used == thing.Id)), thing.Count));
        }

        bool Clash(int one, int other) => one != other && things.Any(thing => thing.Taken[one] + thing.Taken[other] > thing.Most);
        var apart = Enumerable.Range(0, steps.Length).Select(one => Enumerable.Range(0, steps.Length).Select(other => Clash(one, other)).ToArray()).ToArray();
        foreach (var group in Groups(apart).Where(group => !things.Any(thing => IsOf(thing, group))))
        {
            model.Cp.AddNoOverlap(group.Select(step => steps[step].Ways[0].Interval!));
        }
    }

    /// <summary>One thing alone keeps them apart, so its own limit says it.</summary>
    private static bool IsOf((int[] Taken, int Most) thing, List<int> group) =>
        group.Select(step => thing.Taken[step]).Order().Take(2).Sum() > thing.Most;

    /// <summary>For every pair a group that it is in, as large as one finds who takes the most quarrelsome first.</summary>
    private static IEnumerable<List<int>> Groups(bool[][] apart)
    {
        var known = new HashSet<(int, int)>();
        var order = Enumerable.Range(0, apart.Length).OrderByDescending(one => apart[one].Count(clash => clash)).ToArray();
        for (var one = 0; one < apart.Length; one++)
        {
            for (var other = one + 1; other < apart.Length; other++)
            {
                if (!apart[one][other] || known.Contains((one, other)))
                {
                    continue;
                }

                List<int> group = [one, other];
                foreach (var more in order.Where(more => group.TrueForAll(step => apart[step][more])))
                {
                    group.Add(more);
                }

                known.UnionWith(group.SelectMany(_ => group, (first, second) => (first, second)));
                yield return group;
            }
        }
    }
}
