using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Tests;

/// <summary>The same meal under other names, everything declared in the opposite order.</summary>
internal static class Renamed
{
    public static Meal Of(Meal meal) => meal with
    {
        Name = "Another name",
        Courses = [.. meal.Courses.Reverse().Select(course => course with { Id = Of(course.Id), Name = Of(course.Name) })],
        Helpers = [.. meal.Helpers.Reverse().Select(helper => helper with { Id = Of(helper.Id), Name = Of(helper.Name), Can = helper.Can?.Select(Of).ToImmutableHashSet() })],
        Kitchen = meal.Kitchen with
        {
            Ovens = [.. meal.Kitchen.Ovens.Reverse().Select(oven => oven with { Id = Of(oven.Id), Name = Of(oven.Name) })],
            Grills = [.. meal.Kitchen.Grills.Reverse().Select(grill => new Grill(Of(grill.Id), grill.InsideOven is { } oven ? Of(oven) : null))],
            Appliances = [.. meal.Kitchen.Appliances.Reverse().Select(one => one with { Id = Of(one.Id) })],
        },
        Dishes = [.. meal.Dishes.Reverse().Select(Of)],
    };

    private static Dish Of(Dish dish) => dish with
    {
        Id = new DishId(Of(dish.Id.Value)),
        Name = Of(dish.Name),
        Course = Of(dish.Course),
        Holds = [.. dish.Holds.Reverse()],
        Steps = [.. dish.Steps.Reverse().Select(Of)],
    };

    private static Step Of(Step step) => step with
    {
        Id = Of(step.Id),
        Text = Of(step.Text),
        Way = Of(step.Way),
        Options = [.. step.Options.Reverse().Select(Of)],
        Choice = step.Choice is >= 0 and var choice ? step.Options.Length - 1 - choice : step.Choice,
        Needs = [.. step.Needs.Reverse().Select(Of)],
        By = [.. step.By.Reverse().Select(Of)],
        After = [.. step.After.Reverse().Select(after => after with { Step = Of(after.Step) })],
    };

    private static Way Of(Way way) => way with
    {
        Uses = way.Uses with
        {
            Oven = way.Uses.Oven is { } inside ? inside with { Oven = inside.Oven is { } oven ? Of(oven) : null } : null,
            Grill = way.Uses.Grill is { } under ? new GrillUse(under.Grill is { } grill ? Of(grill) : null) : null,
            Appliances = [.. way.Uses.Appliances.Reverse().Select(Of)],
        },
    };

    // Sorts the other way round than the name it stands for.
    private static string Of(string name) => new([.. name.Select(letter => (char)(0x2000 - letter))]);

    private static CourseId Of(CourseId id) => new(Of(id.Value));

    private static StepId Of(StepId id) => new(Of(id.Value));

    private static HelperId Of(HelperId id) => new(Of(id.Value));

    private static OvenId Of(OvenId id) => new(Of(id.Value));

    private static GrillId Of(GrillId id) => new(Of(id.Value));

    private static ApplianceId Of(ApplianceId id) => new(Of(id.Value));
}
