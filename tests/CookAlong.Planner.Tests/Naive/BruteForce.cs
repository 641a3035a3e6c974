using CookAlong.Domain;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Tests.Naive;

/// <summary>
/// The cheapest plan by trying everything, from the rules and the prices as they are written, without a line of the planner.
/// Minutes count from the meal's first.
/// </summary>
internal sealed class BruteForce(Meal meal)
{
    /// <summary>A few meals in a thousand ask for more, and the worst for far more: many tends, and nobody for them.</summary>
    private const int Looks = 10_000_000;

    private readonly List<(Dish Dish, Step Step)> steps = [.. meal.Dishes.SelectMany(dish => dish.Steps.Select(step => (dish, step)))];
    private readonly Dictionary<StepId, Chosen> chosen = [];
    private readonly Patience patience = new(Looks);
    private Dictionary<CourseId, int> tables = [];
    private long best;

    /// <summary>Not everything was tried: what it says is worth nothing.</summary>
    public bool IsTooLarge => patience.IsUp;

    /// <summary>The objective of the best plan whose courses are at most this late; null where there is none.</summary>
    public long? Best(int mostLate)
    {
        best = long.MaxValue;
        foreach (var lates in Combinations(meal.Courses.Length, mostLate))
        {
            tables = meal.Courses.Zip(lates).ToDictionary(one => one.First.Id, one => one.First.TableTime - meal.NotBefore!.Value + one.Second);
            Choose(0, lates.Sum() * 1000L);
        }

        return best == long.MaxValue ? null : best;
    }

    private static IEnumerable<int[]> Combinations(int count, int most) => count == 0
        ? [[]]
        : Combinations(count - 1, most).SelectMany(rest => Enumerable.Range(0, most + 1).Select(one => (int[])[.. rest, one]));

    private void Choose(int index, long cost)
    {
        if (cost >= best || !patience.Looks())
        {
            return;
        }

        if (index == steps.Count)
        {
            Finish(cost);
            return;
        }

        var (dish, step) = steps[index];
        foreach (var (option, way) in step.Ways)
        {
            for (var start = 0; start + way.Minutes.Likely <= tables[dish.Course]; start++)
            {
                var one = new Chosen(dish, step, option, way, start, start + way.Minutes.Likely);
                if (KeepsItsTimes(one))
                {
                    chosen[step.Id] = one;
                    Choose(index + 1, cost + CostOf(one));
                    chosen.Remove(step.Id);
                }
            }
        }
    }

    private bool KeepsItsTimes(Chosen one)
    {
        var start = meal.NotBefore!.Value + one.Start;
        return (one.Step.At is null || one.Step.At == start)
            && (one.Step.Window is not { } window || window.Holds(start, start + (one.End - one.Start)))
            && one.Step.After.All(after => chosen[after.Step].End + after.Least <= one.Start
                && (after.Most is not { } most || one.Start <= chosen[after.Step].End + most));
    }

    private long CostOf(Chosen one)
    {
        var table = tables[one.Dish.Course];
        var rush = one.Way.Attention == Attention.HandsOn
            ? Enumerable.Range(one.Start, one.End - one.Start).Count(minute => minute >= table - 30) * one.Way.People
            : 0;
        return rush + (IsAhead(one) ? 30 : 0);
    }

    private bool IsAhead(Chosen one) => tables.Values.Max() - one.Start > 12 * 60;

    private void Finish(long cost)
    {
        var hands = chosen.Values.Where(one => one.Way.Attention == Attention.HandsOn && !IsAhead(one)).ToList();
        cost += hands.Count == 0 ? 0 : tables.Values.Max() - hands.Min(one => one.Start);
        cost += meal.Courses.Sum(Crowded);
        if (cost >= best || !new NaivePeople(meal, [.. chosen.Values], patience).CanBeDone())
        {
            return;
        }

        foreach (var holds in Holds(0))
        {
            var total = cost + holds.Sum(hold => WaitingCost(hold) + (2L * MissingCushion(hold)));
            if (total < best && new NaivePlaces(meal, [.. chosen.Values], holds, tables).Changes() is { } changes)
            {
                best = Math.Min(best, total + (10L * changes));
            }
        }
    }

    /// <summary>Of the last 30, 20 and 10 minutes before a course, each: one for every minute of hands beyond 60 % of those there.</summary>
    private long Crowded(Course course) => new[] { 30, 20, 10 }.Sum(last =>
    {
        var (promised, table) = (course.TableTime - meal.NotBefore!.Value, tables[course.Id]);
        // Who may only watch something is no pair of hands.
        var there = meal.Helpers.Where(helper => meal.Steps.Any(step => TakesHands(step) && helper.MayDo(step))).Sum(helper =>
            Enumerable.Range(promised - last, last).Count(minute => helper.IsHere(meal.NotBefore!.Value + minute, meal.NotBefore!.Value + minute + 1)) * (helper.IsChild ? 0.5 : 1));
        var busy = chosen.Values.Where(one => one.Dish.Course == course.Id && one.Way.Attention == Attention.HandsOn)
            .Sum(one => Enumerable.Range(one.Start, one.End - one.Start).Count(minute => minute >= table - last) * one.Way.People);
        return Math.Max(0, busy - (int)Math.Floor(there * 0.6 + 1e-9));
    });

    private static bool TakesHands(Step step) => !step.Tends.IsEmpty || step.Ways.Any(one => one.Way.Attention == Attention.HandsOn);

    private static long WaitingCost(Held held)
    {
        long cost = 0;
        for (var minute = 1; minute <= held.Table - held.LastEnd; minute++)
        {
            cost += minute > held.Hold.GoodFor ? 2 * held.Hold.CostPerMinute : minute > held.Hold.BestWithin ? held.Hold.CostPerMinute : 0;
        }

        return cost;
    }

    private static int MissingCushion(Held held) =>
        Enumerable.Range(0, 5).Count(minute => minute < held.Hold.BestWithin / 2 && minute >= held.Table - held.LastEnd);

    private IEnumerable<Held[]> Holds(int index)
    {
        if (index == meal.Dishes.Length)
        {
            return [[]];
        }

        var dish = meal.Dishes[index];
        var (lastEnd, table) = (dish.Steps.Max(step => chosen[step.Id].End), tables[dish.Course]);
        return dish.Holds.Where(hold => hold.Least <= table - lastEnd && table - lastEnd <= hold.Limit)
            .SelectMany(hold => Holds(index + 1).Select(rest => (Held[])[new Held(dish, hold, lastEnd, table), .. rest]));
    }
}

/// <summary>So many looks, shared by all that try.</summary>
internal sealed class Patience(int looks)
{
    public bool IsUp => looks <= 0;

    public bool Looks() => looks-- > 0;
}

internal sealed record Chosen(Dish Dish, Step Step, int Option, Way Way, int Start, int End);

internal sealed record Held(Dish Dish, Hold Hold, int LastEnd, int Table);
