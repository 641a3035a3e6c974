using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>What is hot stands where it was put: a plan only counts places, and a new one would number them anew.</summary>
public sealed class PlacesKeptTests
{
    [Fact]
    public void A_pan_stays_on_its_ring_when_a_new_plan_puts_the_pan_beside_it_later()
    {
        var story = Begun(new Uses(null, 1, null, []), trimAt: At(14, 20)).At(14, 20).Finished(Roll).Given(new RunEvent.StepStarted(Trim));
        Assert.Equal([null, Trim, null, null], Rings(story));

        story.Given(new RunEvent.PlanAccepted(With(Boil, At(14, 25), story.Run.Plan)));
        Assert.Equal([null, Trim, null, null], Rings(story));

        story.At(14, 25).Given(new RunEvent.StepStarted(Boil));
        Assert.Equal([Boil, Trim, null, null], Rings(story));
    }

    [Fact]
    public void A_roast_stays_on_its_shelves_when_a_new_plan_puts_the_tray_beside_it_later()
    {
        var tray = new Uses(new OvenUse(null, 1, new CelsiusRange(170, 180, 190)), 0, null, []);
        var story = Begun(tray, trimAt: At(12, 35), oven: SmallMeal.Oven).At(12, 40).Finished(Stuff).Given(new RunEvent.StepStarted(Roast));
        var before = Shelves(story);
        Assert.Equal([1, 2], before);

        story.Given(new RunEvent.PlanAccepted(With(Trim, At(14, 15), story.Run.Plan)));
        Assert.Equal(before, Shelves(story));
    }

    [Fact]
    public void Once_it_is_off_the_heat_its_ring_is_anybodys()
    {
        var story = Begun(new Uses(null, 1, null, []), trimAt: At(14, 20)).At(14, 20).Finished(Roll).Given(new RunEvent.StepStarted(Trim));
        story.Given(new RunEvent.PlanAccepted(With(Boil, At(14, 25), story.Run.Plan)));

        story.At(14, 24).Finished(Trim).At(14, 25).Given(new RunEvent.StepStarted(Boil));

        Assert.Equal(Boil, Assert.Single(Rings(story), step => step is not null));
    }

    /// <summary>Trimming is done in a pan or on a tray.</summary>
    static KitchenStory Begun(Uses uses, Minute trimAt, OvenId? oven = null)
    {
        var meal = SmallMeal.Meal with
        {
            Dishes = [.. SmallMeal.Meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(step => step.Id == Trim ? step with { Way = step.Way with { Uses = uses } } : step)] })],
        };
        var plan = With(Trim, trimAt, SmallMeal.Plan);
        plan = plan with { Steps = [.. plan.Steps.Select(step => step.Step == Trim ? step with { Oven = oven } : step)] };
        return new KitchenStory().Given([.. Run.Start(meal, plan, Host, "Maren", Maren)]);
    }

    static Plan With(StepId moved, Minute start, Plan plan) => plan with
    {
        Steps = [.. plan.Steps.Select(step => step.Step == moved ? step with { Start = start, End = start + step.Minutes } : step)],
    };

    static StepId?[] Rings(KitchenStory story) => [.. story.Board().Rings.Select(ring => ring.Card?.Step.Id)];

    static int[] Shelves(KitchenStory story) =>
        [.. Assert.Single(story.Board().Ovens).Shelves.Index().Where(shelf => shelf.Item?.Card?.Step.Id == Roast).Select(shelf => shelf.Index)];
}
