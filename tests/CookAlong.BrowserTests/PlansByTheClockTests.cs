using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Planning;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>New plans: offered, taken, taken back, and taken by themselves when they move nobody far. The planner finds what the test wants.</summary>
[Collection(Browsers.Name)]
public sealed class PlansByTheClockTests(Chromium chromium)
{
    [Fact]
    public async Task A_plan_taken_on_the_tablet_is_told_to_whose_next_step_it_changes_and_is_taken_back_with_one_tap()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium, plan => With(plan, ClockedKitchen.Mash, ClockedKitchen.At(12, 5), ClockedKitchen.Maren));
        var (tablet, ivo, maren) = (kitchen.Tablet, await kitchen.JoinAsync("Ivo"), await kitchen.HostPhoneAsync());
        await Expect(ivo.Page.Locator("#live")).ToContainTextAsync("Make the mash");
        await MoveTableAsync(tablet);
        await tablet.Page.GetByText("Show the new plan").ClickAsync();
        await Expect(tablet.Page.Locator("#offer")).ToContainTextAsync("Maren instead of Ivo: “Make the mash” at 12:05, not 12:15");
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" }).ClickAsync();

        await Expect(maren.Page.Locator("#taken .own")).ToHaveTextAsync(["Your next step: “Make the mash” now at 12:05 (was 12:15)"]);
        await Expect(ivo.Page.Locator("#taken .own")).ToHaveTextAsync(["Not yours any more: “Make the mash”; Maren will do it"]);
        await Expect(ivo.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" })).ToHaveCountAsync(0);
        await tablet.PictureAsync("plan-taken");
        await tablet.ShouldBeCleanAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();

        await Expect(ivo.Page.Locator("#taken")).ToContainTextAsync("Back to the plan before");
        await Expect(ivo.Page.Locator("#taken .own")).ToHaveTextAsync([new System.Text.RegularExpressions.Regex("“Make the mash” now at 12:15")]);
        await Expect(maren.Page.Locator("#taken .own")).ToHaveTextAsync([new System.Text.RegularExpressions.Regex("Not yours any more: “Make the mash”; Ivo will do it")]);
        await Expect(tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" })).ToHaveCountAsync(0);
        foreach (var screen in new[] { tablet, ivo, maren })
        {
            await screen.PictureAsync("plan-back");
            await screen.ShouldBeCleanAsync();
        }
    }

    [Fact]
    public async Task By_the_host_s_rule_a_plan_that_moves_nobody_by_more_than_5_minutes_is_taken_by_itself_and_told()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium, plan => With(plan, ClockedKitchen.Chop, ClockedKitchen.At(12, 5), ClockedKitchen.Ivo));
        var (tablet, ivo) = (kitchen.Tablet, await kitchen.JoinAsync("Ivo"));
        await ChooseFiveMinutesAsync(tablet);
        await MoveTableAsync(tablet);
        await kitchen.BeatAsync();

        await Expect(tablet.Page.Locator("#taken")).ToContainTextAsync("Ivo: “Chop the cabbage” now at 12:05 (was 12:00)");
        await Expect(tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" })).ToHaveCountAsync(0);
        await Expect(ivo.Page.Locator("#taken .own")).ToHaveTextAsync(["Your next step: “Chop the cabbage” now at 12:05 (was 12:00)"]);
        await ivo.PictureAsync("plan-by-itself");
        await ivo.ShouldBeCleanAsync();
        await tablet.GoToAsync($"{new Uri(tablet.Page.Url).AbsolutePath}/log");
        await Expect(tablet.Page.Locator("main")).ToContainTextAsync("The kitchen took a new plan");
    }

    [Fact]
    public async Task By_the_same_rule_a_plan_that_moves_somebody_by_6_minutes_waits_for_the_host()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium, plan => With(plan, ClockedKitchen.Chop, ClockedKitchen.At(12, 6), ClockedKitchen.Ivo));
        var (tablet, ivo) = (kitchen.Tablet, await kitchen.JoinAsync("Ivo"));
        await ChooseFiveMinutesAsync(tablet);
        await MoveTableAsync(tablet);
        await Expect(tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" })).ToBeVisibleAsync();
        await kitchen.BeatAsync();
        await kitchen.BeatAsync();

        await tablet.Page.GetByText("Show the new plan").ClickAsync();
        await Expect(tablet.Page.Locator("#offer")).ToContainTextAsync("Ivo: “Chop the cabbage” at 12:06, not 12:00");
        await Expect(tablet.Page.Locator("#taken")).ToHaveCountAsync(0);
        await Expect(ivo.Page.Locator("#taken")).ToHaveCountAsync(0);
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" }).ClickAsync();
        await Expect(ivo.Page.Locator("#taken .own")).ToHaveTextAsync(["Your next step: “Chop the cabbage” now at 12:06 (was 12:00)"]);
    }

    static async Task ChooseFiveMinutesAsync(Screen tablet)
    {
        await tablet.Page.GetByText("Change of plan").ClickAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "By itself up to 5 min" }).ClickAsync();
        await Expect(tablet.Page.Locator("#change-of-plan")).ToContainTextAsync("moves by more than 5 min");
        await tablet.Page.GetByText("Change of plan").ClickAsync();
    }

    /// <summary>Upsets the plan, so that a new one is looked for.</summary>
    static async Task MoveTableAsync(Screen tablet)
    {
        await tablet.Page.GetByText("Change of plan").ClickAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "15 min later" }).ClickAsync();
        await Expect(tablet.Page.Locator("#slip, #taken")).ToBeVisibleAsync();
    }

    static Plan With(Plan plan, StepId step, Minute start, HelperId by) =>
        plan with { Steps = [.. plan.Steps.Select(one => one.Step == step ? one with { Start = start, End = start + one.Minutes, Helpers = [by] } : one)] };
}
