using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Tests.Naive;

/// <summary>
/// Whether ovens, grills, rings and appliances have room, by trying every oven, grill and going-in, minute by minute; and how
/// seldom a single oven's temperature changes then.
/// </summary>
internal sealed class NaivePlaces(Meal meal, Chosen[] steps, Held[] holds, Dictionary<CourseId, int> tables)
{
    private readonly int end = tables.Values.Max();

    /// <summary>The fewest changes of the oven's temperature; 0 with several ovens, null where something does not fit.</summary>
    public int? Changes() => Minutes().All(minute => RingsFit(minute) && AppliancesFit(minute)) ? Place(0, [], []) : null;

    private IEnumerable<int> Minutes() => Enumerable.Range(0, end + 1);

    private IEnumerable<Chosen> At(int minute) => steps.Where(one => one.Start <= minute && minute < one.End);

    private bool RingsFit(int minute) => At(minute).Sum(one => one.Way.Uses.Rings) <= meal.Kitchen.Rings;

    private bool AppliancesFit(int minute) => At(minute).SelectMany(one => one.Way.Uses.Appliances).CountBy(id => id)
        .All(used => used.Value <= meal.Kitchen.Appliances.Where(one => one.Id == used.Key).Sum(one => one.Count));

    private int? Place(int index, List<Inside> inside, List<Under> under)
    {
        if (index == steps.Length)
        {
            return KeepWarm(0, inside, under);
        }

        var one = steps[index];
        var ovens = one.Way.Uses.Oven is { } use ? meal.Kitchen.Ovens.Where(oven => (use.Oven ?? oven.Id) == oven.Id) : Enumerable.Repeat<Oven?>(null, 1);
        var grills = one.Way.Uses.Grill is { } asked ? meal.Kitchen.Grills.Where(grill => (asked.Grill ?? grill.Id) == grill.Id) : Enumerable.Repeat<Grill?>(null, 1);
        return ovens.Min(oven => grills.Min(grill => Place(
            index + 1,
            oven is null ? inside : [.. inside, new Inside(oven, one.Way.Uses.Oven!.Celsius, one.Way.Uses.Oven.Shelves, one.Start, one.End)],
            grill is null ? under : [.. under, new Under(grill, one.Start, one.End)])));
    }

    private int? KeepWarm(int index, List<Inside> inside, List<Under> under)
    {
        if (index == holds.Length)
        {
            return GrillsFit(inside, under) && meal.Kitchen.Ovens.All(oven => OvenFits(oven, [.. inside.Where(one => one.Oven == oven)]))
                ? meal.Kitchen.Ovens.Length == 1 ? ChangesOf(inside) : 0
                : null;
        }

        var held = holds[index];
        if (held.Hold.Oven is not { } warm)
        {
            return KeepWarm(index + 1, inside, under);
        }

        return meal.Kitchen.Ovens.Min(oven => Enumerable.Range(held.LastEnd, warm.StandFirst + 1).Where(from => from <= held.Table)
            .Min(from => KeepWarm(index + 1, [.. inside, new Inside(oven, warm.Celsius, warm.Shelves, from, held.Table)], under)));
    }

    private bool GrillsFit(List<Inside> inside, List<Under> under) => Minutes().All(minute =>
    {
        var on = under.Where(one => one.Start <= minute && minute < one.End).ToList();
        return on.CountBy(one => one.Grill).All(one => one.Value == 1)
            && !on.Any(one => inside.Any(other => other.Oven.Id == one.Grill.InsideOven && other.Start <= minute && minute < other.End));
    });

    /// <summary>The temperatures the oven can have reached, minute by minute; none left means it cannot be done.</summary>
    private bool OvenFits(Oven oven, Inside[] inside)
    {
        decimal low = oven.StartsAt, high = oven.StartsAt;
        foreach (var minute in Minutes())
        {
            if (minute > 0)
            {
                (low, high) = (low - oven.CoolDownPerMinute, high + oven.HeatUpPerMinute);
            }

            foreach (var one in inside.Where(one => one.Start <= minute && minute <= one.End))
            {
                low = Math.Max(low, Math.Max(one.Celsius.Min, oven.Min));
                high = Math.Min(high, Math.Min(one.Celsius.Max, oven.Max));
            }

            if (low > high || inside.Where(one => one.Start <= minute && minute < one.End).Sum(one => one.Shelves) > oven.Shelves)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Keeps each set point for as long as some degree suits all that is inside, minute by minute.</summary>
    private int ChangesOf(List<Inside> inside)
    {
        var (changes, since) = (0, 0);
        for (var minute = 1; minute <= end + 1; minute++)
        {
            var together = inside.Where(one => (one.End > since || one.Start >= since) && one.Start < minute).ToList();
            if (!Enumerable.Range(0, 300).Any(celsius => together.All(one => one.Celsius.Min <= celsius && celsius <= one.Celsius.Max)))
            {
                (changes, since) = (changes + 1, minute - 1);
            }
        }

        return changes;
    }

    private sealed record Inside(Oven Oven, CelsiusRange Celsius, int Shelves, int Start, int End);

    private sealed record Under(Grill Grill, int Start, int End);
}
