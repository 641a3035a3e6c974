using CookAlong.Domain.Debrief;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>A dish that nobody had planned.</summary>
public sealed class AddedDishTests
{
    static readonly StepId Peel = new("pears-peel"), Bake = new("pears-bake");

    static Step Stepped(StepId id, int minutes, Uses? uses = null, params StepId[] after) => SmallMeal.Meal.Step(Trim) with
    {
        Id = id,
        Text = id.Value,
        Needs = [],
        Way = new Way(Durations.Exactly(minutes), uses is null ? Attention.HandsOn : Attention.Unattended, 1, uses ?? Uses.Nothing),
        After = [.. after.Select(one => new After(one, 5, null))],
    };

    static Dish Pears { get; } = SmallMeal.Meal.Dishes[2] with
    {
        Id = new("pears"),
        Name = "Baked pears",
        Steps = [Stepped(Peel, 10), Stepped(Bake, 30, new Uses(new OvenUse(null, 1, new CelsiusRange(160, 170, 180)), 0, null, []), Peel)],
    };

    static KitchenStory Added(int hour = 12, int minute = 10) => KitchenStory.Begun().At(hour, minute).When(Host, new RunCommand.AddDish(Pears));

    [Fact]
    public void It_lies_as_late_as_its_recipe_allows_and_is_nobodys_until_there_is_a_plan()
    {
        var run = Added().Run;
        Assert.Equal((At(14, 15), At(14, 30), At(15)), (run.Plan.Step(Peel).Start, run.Plan.Step(Bake).Start, run.Plan.Step(Bake).End));
        Assert.Equal(SmallMeal.Oven, run.Plan.Step(Bake).Oven);
        Assert.True(run.IsFree(run.Meal.Step(Peel)));
        Assert.False(run.Wish!.IsEarly);
        Assert.Equal(At(15), Added().Board().Courses[0].Expected);
    }

    [Fact]
    public void Where_it_is_too_late_for_that_it_begins_at_once_and_the_table_slips()
    {
        var late = Added(14, 40);
        Assert.Equal((At(14, 40), At(14, 55)), (late.Run.Plan.Step(Peel).Start, late.Run.Plan.Step(Bake).Start));
        Assert.True(late.Board().Courses[0].Expected >= At(15, 25));
        Assert.Equal(At(15, 25), KitchenStory.Begun().Run.SoonestOf(Pears, Clock(14, 40)));
    }

    [Fact]
    public void A_new_plan_is_asked_for_with_it()
    {
        var request = Added().Run.Replan(new PlanLimits(TimeSpan.FromSeconds(1)), Clock(13));
        Assert.Contains(request.Meal.Dishes, dish => dish.Id == Pears.Id);
        Assert.Contains(request.So!.Current.Steps, planned => planned.Step == Bake);
    }

    [Fact]
    public void It_is_taken_back_by_leaving_it_out_and_comes_back_as_it_was()
    {
        var without = Added().When(Host, new RunCommand.DropDish(Pears.Id));
        Assert.DoesNotContain(without.Run.Meal.Steps, step => step.Id == Peel);
        Assert.Equal(At(14, 15), without.When(Host, new RunCommand.BringBackDish(Pears.Id)).Run.Plan.Step(Peel).Start);
        without.When(Host, new RunCommand.AddDish(Pears)).Refused(new Refusal.DishIsThere(Pears.Id));
    }

    [Fact]
    public void Only_the_host_adds_and_only_what_can_be_cooked_here_for_a_table_to_come()
    {
        var kitchen = KitchenStory.Begun().At(13);
        kitchen.When(IvoPhone, new RunCommand.AddDish(Pears)).Refused(new Refusal.NotYourRole(Role.Host));
        kitchen.When(Host, new RunCommand.AddDish(Pears with { Course = new("supper") })).Refused(new Refusal.UnknownCourse(new("supper")));
        kitchen.When(Host, new RunCommand.AddDish(Pears with { Steps = [] })).Refused(new Refusal.NothingToCook("Baked pears"));
        kitchen.At(15).When(Host, new RunCommand.AddDish(Pears)).Refused(new Refusal.TableTimePast(Main));
        var hot = Stepped(Bake, 30, new Uses(new OvenUse(null, 1, new CelsiusRange(260, 270, 280)), 0, null, []));
        kitchen.At(13).When(Host, new RunCommand.AddDish(Pears with { Steps = [hot] })).Refused(new Refusal.NoPlaceFor("pears-bake"));
    }

    [Fact]
    public void Looked_back_on_it_stands_beside_the_others()
    {
        var log = Added().At(14, 20).Given(new RunEvent.StepStarted(Peel)).At(14, 30).Given(new RunEvent.StepFinished(Peel))
            .Given(new RunEvent.StepStarted(Bake)).At(15, 5).Given(new RunEvent.StepFinished(Bake)).Given(new RunEvent.RunEnded()).Log;
        var peel = RunDebrief.Of(log).Steps.Single(step => step.Step == Peel);
        Assert.Equal((At(14, 15), Clock(14, 20)), (peel.PlannedStart, peel.Started));
    }
}
