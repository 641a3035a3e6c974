using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Quick;

// What people were told: when, how and by whom.
internal sealed partial class Reading
{
    /// <summary>The plan that was told of a meal that does not run yet, put forward by what it was late. What is new since ends as late as what follows it lets it.</summary>
    private QuickMoved AsTold(QuickStep[] steps, QuickDish[] dishes)
    {
        var (ways, holds, ends) = (ToldWays(steps), ToldHolds(dishes), new int?[steps.Length]);
        int[] late = [.. meal.Courses.Select(course => told!.Plan.Courses.FirstOrDefault(one => one.Course == course.Id)?.LateMinutes ?? 0)];
        int Minutes(QuickStep step) => step.Ways[ways[step.Index]].Minutes;
        int End(QuickStep step) => ends[step.Index] ??= step.Told is { } start
            ? start + Minutes(step) - late[step.Course]
            : step.After.Select(gap => End(steps[gap.Step]) - Minutes(steps[gap.Step]) - gap.Least)
                .Append(clock.Of(meal.Courses[step.Course].TableTime) - dishes[step.Dish].Holds[holds[step.Dish]].Hold.Least).Min();
        int[] onTime = [.. meal.Courses.Select(_ => 0)];
        return new QuickMoved([.. steps.Select(End)], ways, holds, onTime, onTime);
    }

    /// <summary>Positions; the first where nothing was told, or what was is no longer possible.</summary>
    private int[] ToldWays(QuickStep[] steps) => [.. steps.Select(step => Math.Max(0, Array.FindIndex(step.Ways, way => way.Option == told!.Step(step.Step.Id)?.Option)))];

    private int[] ToldHolds(QuickDish[] dishes) =>
        [.. dishes.Select(dish => Math.Max(0, Array.FindIndex(dish.Holds, hold => hold.Index == told!.Plan.Holds.FirstOrDefault(held => held.Dish == dish.Dish.Id)?.Hold)))];

    private int? ToldAt(Step step, int tend, int turn) =>
        moved is not null ? (moved.Tends.TryGetValue((step.Id, tend, turn), out var then) ? then - moved.Steps[step.Id].Start : null)
        : told is not null && told.Step(step.Id) is { } was && told.Plan.Tends.FirstOrDefault(one => one.Step == step.Id && one.Tend == tend && one.Turn == turn) is { } at
            ? at.At - was.Start
            : null;

    private int[] ToldTo(Step step, int tend, int turn) =>
        told?.Plan.Tends.FirstOrDefault(one => one.Step == step.Id && one.Tend == tend && one.Turn == turn) is { } at ? rows.Helpers(helper => helper.Id == at.Helper) : [];

    private static int[] ToldFirst(int[] able, int[] told) => [.. able.OrderBy(helper => told.Contains(helper) ? 0 : 1)];
}
