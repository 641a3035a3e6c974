using CookAlong.Domain.Planning;
using static CookAlong.Domain.Tests.Runs.SmallMeal;
using TheMeal = CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Planning;

public sealed class PlanDifferenceTests
{
    [Fact]
    public void The_same_plan_changes_nothing_for_anybody() =>
        Assert.Empty(PlanDifference.Of(TheMeal.Plan, TheMeal.Plan, _ => true));

    [Fact]
    public void A_next_step_that_moves_is_named_with_both_times()
    {
        var change = Assert.Single(PlanDifference.Of(TheMeal.Plan, Moved(Roll, 10), _ => true));
        Assert.Equal((Roll, At(14), At(14, 10)), (change.Step, change.Was, change.Becomes));
    }

    [Fact]
    public void A_step_after_the_next_one_is_nobody_s_news_yet()
    {
        Assert.Empty(PlanDifference.Of(TheMeal.Plan, Moved(Carve, 5), _ => true));
        Assert.Equal(Carve, Assert.Single(PlanDifference.Of(TheMeal.Plan, Moved(Carve, 5), step => step != Stuff)).Step);
    }

    [Fact]
    public void A_next_step_in_other_hands_is_news_to_both()
    {
        var made = TheMeal.Plan with { Steps = [.. TheMeal.Plan.Steps.Select(step => step.Step == Roll ? step with { Helpers = [Ivo] } : step)] };
        var change = Assert.Single(PlanDifference.Of(TheMeal.Plan, made, _ => true), one => one.Step == Roll);
        Assert.Equal((Tobi, Ivo), (change.WasBy[0], change.BecomesBy[0]));
    }

    static Plan Moved(StepId moved, int minutes) => TheMeal.Plan with
    {
        Steps = [.. TheMeal.Plan.Steps.Select(step => step.Step == moved ? step with { Start = step.Start + minutes, End = step.End + minutes } : step)],
    };
}
