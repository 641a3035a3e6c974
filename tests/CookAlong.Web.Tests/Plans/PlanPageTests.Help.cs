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

    [Fact]
    public async Task While_a_meal_with_a_dish_less_is_planned_the_plan_of_the_whole_one_is_not_shown()
    {
        planner.Next = AlderLane.Plan with { Conflicts = [new(new PlanChange.LeaveOut(new("pears")), 20)] };
        var page = await PlannedAsync();
        planner.Hold();

        await ClickAsync(page, "Do it");
        await page.WaitForStateAsync(() => page.FindAll(".progress").Count == 1);
        planner.Tell(new PlanProgress(TimeSpan.FromSeconds(1), 900, 0.2, 0));
        Assert.Empty(page.FindAll(".timetable"));
        planner.Next = AlderLane.Plan with { Steps = [.. AlderLane.Plan.Steps.Where(step => !step.Step.Value.StartsWith("pears-", StringComparison.Ordinal))] };
        planner.LetGo();

        await page.WaitForStateAsync(() => page.FindAll(".timetable").Count == 1);
        Assert.DoesNotContain("Grill the pears", page.Find(".timetable").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hands_that_are_taken_back_leave_no_plan_that_needs_them()
    {
        planner.Next = AlderLane.Plan with { Conflicts = [new(new PlanChange.AddHelper(AlderLane.At("10:00"), AlderLane.At("15:00")), 20)] };
        var page = await PlannedAsync();
        planner.Next = AlderLane.Plan with { Steps = [.. AlderLane.Plan.Steps.Select(step => step.Step.Value == "potatoes-peel" ? step with { Helpers = [ChangedMeal.NewHelper(AlderLane.Meal)] } : step)] };
        clock.Advance(TimeSpan.FromSeconds(1));
        await ClickAsync(page, "Do it");
        await page.WaitForStateAsync(() => page.FindAll(".made").Count == 1 && page.FindAll(".timetable").Count == 1);
        planner.Hold();

        await ClickAsync(page, "Take it back");

        await page.WaitForStateAsync(() => page.FindAll(".progress").Count == 1);
        Assert.Empty(page.FindAll(".timetable"));
        // Whoever comes while it is planned anew, or after it was left, finds the page too.
        Assert.Contains("No plan yet", (await PageAsync()).Find(".status").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_somebody_else_left_a_dish_out_meanwhile_its_plan_is_not_shown()
    {
        var page = await PlannedAsync();
        await Services.GetRequiredService<MealBook>().EditAsync(await KeptAsync(), meal => meal.Apply(new PlanChange.LeaveOut(new("pears"))), fromNow: false, TestContext.Current.CancellationToken);
        await page.InvokeAsync(() => page.FindAll(".timetable button").Single(line => line.TextContent.Contains("Peel the potatoes", StringComparison.Ordinal)).Click());
        await page.WaitForStateAsync(() => page.FindAll(".panel").Count == 1);

        await ClickAsync(page, "Keep it at 11:05");

        await page.WaitForAssertionAsync(() => Assert.Contains("Somebody else changed this meal", page.Find(".status").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll(".timetable"));
    }
}
