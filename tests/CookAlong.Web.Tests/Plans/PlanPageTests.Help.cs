using Bunit;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Tests.Meals;
using Microsoft.Extensions.DependencyInjection;
using TestContext = Xunit.TestContext;

namespace CookAlong.Web.Tests.Plans;

/// <summary>What would help a late plan, done and taken back on the page.</summary>
public sealed partial class PlanPageTests
{
    [Fact]
    public async Task What_would_help_a_late_plan_is_said_in_sentences()
    {
        planner.Next = AlderLane.Plan with { Conflicts = [new(new PlanChange.AddOven(), 20)] };
        var page = await PlannedAsync();

        Assert.Contains("Borrow a second oven: that serves 20 minutes earlier.", page.Find(".conflicts").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_would_help_is_done_by_one_touch_and_planned_again()
    {
        planner.Next = AlderLane.Plan with { Conflicts = [new(new PlanChange.AddOven(), 20)] };
        var page = await PlannedAsync();
        planner.Next = AlderLane.Plan;

        await ClickAsync(page, "Do it");

        await page.WaitForAssertionAsync(() => Assert.Contains("Done: Borrow a second oven.", page.Find(".made").TextContent, StringComparison.Ordinal));
        Assert.Equal(["Oven", "Second oven"], (await KeptAsync()).Meal.Kitchen.Ovens.Select(oven => oven.Name));
        Assert.Equal(2, planner.Meal!.Kitchen.Ovens.Length);
        Assert.Empty(page.FindAll(".conflicts"));
    }

    [Fact]
    public async Task What_was_done_is_taken_back_to_the_letter()
    {
        planner.Next = AlderLane.Plan with { Conflicts = [new(new PlanChange.AddOven(), 20)] };
        var page = await PlannedAsync();
        var before = (await KeptAsync()).Row.Document;
        await ClickAsync(page, "Do it");
        await page.WaitForStateAsync(() => page.FindAll(".made").Count == 1);

        await ClickAsync(page, "Take it back");

        await page.WaitForStateAsync(() => page.FindAll(".conflicts").Count == 1 && page.FindAll(".made").Count == 0);
        Assert.Equal(before, (await KeptAsync()).Row.Document);
        await page.WaitForAssertionAsync(() => Assert.Single(planner.Meal!.Kitchen.Ovens));
    }

    [Fact]
    public async Task Where_the_meal_was_changed_meanwhile_nothing_is_done()
    {
        planner.Next = AlderLane.Plan with { Conflicts = [new(new PlanChange.AddRings(1), 20)] };
        var page = await PlannedAsync();
        var book = Services.GetRequiredService<MealBook>();
        await book.EditAsync(await KeptAsync(), meal => meal.Rename("Another name"), fromNow: false, TestContext.Current.CancellationToken);

        await ClickAsync(page, "Do it");

        await page.WaitForAssertionAsync(() => Assert.Contains("Somebody else changed this meal", page.Find(".status").TextContent, StringComparison.Ordinal));
        Assert.Equal(4, (await KeptAsync()).Meal.Kitchen.Rings);
    }
}
