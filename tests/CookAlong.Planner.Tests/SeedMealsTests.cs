using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Planner.Quick;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

public sealed class SeedMealsTests
{
    public static TheoryData<string> Files =>
        [.. Directory.GetFiles(Path.Combine(Root(), "seed-data", "meals"), "*.json").Select(file => Path.GetFileName(file)).Order()];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_meal_that_comes_with_the_house_is_planned_on_time(string file)
    {
        var meal = Meal(file);

        var plan = Plan(meal, effort: 4);

        Assert.NotEqual(PlanStatus.None, plan.Status);
        Assert.Equal(0, plan.Cost.LateMinutes);
        Assert.Empty(PlanCheck.Check(meal, plan));
    }

    /// <summary>What is shown first, before the solver has looked.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void Of_every_such_meal_a_plan_on_time_is_found_in_two_hundred_layouts(string file)
    {
        var meal = Nights.Observed(Meal(file));
        var search = QuickSearch.Of(meal, new Clock(Clock.Origins(meal, null).Last(), 0, Clock.MostLateMinutes), told: null, Prices.Of(cushion: 5, Leans.None), seed: 1)!;

        search.Run(first: 500, more: 0, () => search.Layouts > 200);

        Assert.NotNull(search.Found);
        Assert.Equal(0, search.Late);
    }

    public static Meal Meal(string file) => MealFile.Read(File.ReadAllText(Path.Combine(Root(), "seed-data", "meals", file))).Meal!;

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "CookAlong.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("CookAlong.sln lies in no folder above the tests");
        }

        return folder.FullName;
    }
}
