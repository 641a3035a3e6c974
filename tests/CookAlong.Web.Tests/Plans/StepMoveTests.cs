using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class StepMoveTests
{
    static Plan With(string step, Func<PlannedStep, PlannedStep> change) =>
        AlderLane.Plan with { Steps = [.. AlderLane.Plan.Steps.Select(one => one.Step.Value == step ? change(one) : one)] };

    [Fact]
    public void The_same_plan_again_changes_nothing() => Assert.Empty(StepMove.Between(AlderLane.Plan, AlderLane.Plan));

    [Fact]
    public void A_step_at_another_time_says_both_times()
    {
        var move = Assert.Single(StepMove.Between(AlderLane.Plan, With("potatoes-peel", step => step with { Start = step.Start + 15, End = step.End + 15 })));

        Assert.Equal("Peel the potatoes: 11:20 instead of 11:05", move.Words(AlderLane.Meal));
    }

    [Fact]
    public void A_step_that_changes_hands_says_whose_it_was()
    {
        var move = Assert.Single(StepMove.Between(AlderLane.Plan, With("goose-carve", step => step with { Helpers = [new HelperId("ivo")] })));

        Assert.Equal("Carve the goose: Ivo instead of Maren", move.Words(AlderLane.Meal));
    }

    [Fact]
    public void A_step_done_another_way_says_so()
    {
        var move = Assert.Single(StepMove.Between(AlderLane.Plan, With("potatoes-peel", step => step with { Option = 0, End = step.Start + 12 })));

        Assert.Equal("Peel the potatoes: another way, 12 min", move.Words(AlderLane.Meal));
    }

    [Fact]
    public void A_step_moved_to_the_day_before_names_the_day()
    {
        var move = Assert.Single(StepMove.Between(AlderLane.Plan, With("pudding-mix", step => step with { Start = step.Start - 1440, End = step.End - 1440 })));

        Assert.Equal("Mix the pudding and tie it down: Friday 13:05 instead of Saturday 13:05", move.Words(AlderLane.Meal));
    }
}
