using Bunit;
using Bunit.TestDoubles;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Household;
using CookAlong.Web.Tests.Meals;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using MudBlazor.Services;
using TestContext = Xunit.TestContext;

namespace CookAlong.Web.Tests.Plans;

public sealed partial class PlanPageTests : BunitContext, IAsyncLifetime
{
    readonly HouseholdFile household = new();
    readonly PatientPlanner planner = new();
    readonly FakeTimeProvider clock = new(AlderLane.At("09:00", dayBefore: true).Utc);
    KeptMeal meal = null!;

    public PlanPageTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        this.AddPace(clock);
        Services.AddMudServices();
        Services.AddSingleton(new MealBook(household, clock));
        Services.AddSingleton(new HouseholdRegion(household));
        Services.AddSingleton(new EventLog(household));
        Services.AddSingleton(new PlanningDesk(planner, household, clock));
        SetRendererInfo(new("Server", true));
    }

    public async ValueTask InitializeAsync()
    {
        var book = Services.GetRequiredService<MealBook>();
        meal = ((MealEdit.Kept)await book.AddAsync(MealFile.Write(AlderLane.Meal), fromNow: false, TestContext.Current.CancellationToken)).Meal;
    }

    public new async ValueTask DisposeAsync()
    {
        planner.LetGo();
        await base.DisposeAsync();
        household.Dispose();
    }

    [Fact]
    public async Task Whoever_plans_far_too_often_is_told_when_to_go_on()
    {
        var page = await PageAsync();
        Services.GetRequiredService<Paces>().Spend(Paced.Session, Deed.Heavy);

        await ClickAsync(page, "Plan");

        await page.WaitForAssertionAsync(() => Assert.Contains("go on in 5 s", page.Find(".trouble").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll(".timetable"));
    }

    [Fact]
    public async Task One_button_makes_the_plan_and_shows_it()
    {
        var page = await PageAsync();
        planner.LetGo();

        await ClickAsync(page, "Plan");

        await page.WaitForAssertionAsync(() => Assert.Contains("Main course at 15:00; Pudding at 16:10: on time.", page.Find(".headline").TextContent, StringComparison.Ordinal));
        Assert.Contains("Peel the potatoes", page.Find(".timetable").TextContent, StringComparison.Ordinal);
        Assert.Equal("Plan again", Button(page, "Plan again").TextContent);
        Assert.False(Button(page, "Start cooking").HasAttribute("disabled"));
    }

    [Fact]
    public async Task While_it_plans_the_best_so_far_is_told_and_can_be_taken()
    {
        var page = await PageAsync();

        await ClickAsync(page, "Plan");
        await planner.Begun;
        planner.Tell(new PlanProgress(TimeSpan.FromSeconds(1), 900, 0.2, 0));

        await page.WaitForAssertionAsync(() => Assert.Contains("A plan on time is found. Looking for a better one; at most 20\u00A0% is left to gain.", page.Find(".progress").TextContent.ReplaceLineEndings(" ").Replace("  ", "", StringComparison.Ordinal), StringComparison.Ordinal));
        await ClickAsync(page, "Stop, take the best so far");

        await page.WaitForAssertionAsync(() => Assert.Contains("Peel the potatoes", page.Find(".timetable").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_first_plan_is_drawn_while_a_better_one_is_looked_for()
    {
        var page = await PageAsync();
        await ClickAsync(page, "Plan");
        await planner.Begun;

        planner.Tell(new PlanProgress(TimeSpan.FromMilliseconds(20), 900, 1, 0) { Plan = AlderLane.Plan });
        planner.Tell(new PlanProgress(TimeSpan.FromMilliseconds(40), 800, 0.2, 0));

        await page.WaitForAssertionAsync(() => Assert.Contains("at most 20\u00A0% is left to gain", page.Find(".progress").TextContent, StringComparison.Ordinal));
        Assert.Contains("Peel the potatoes", page.Find(".timetable").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(page.FindAll("button"), button => button.TextContent == "Start cooking");
        Assert.Null(await Services.GetRequiredService<PlanningDesk>().LatestAsync(meal.Row, meal.Meal, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Whoever_leaves_stops_the_planner_and_nothing_is_kept()
    {
        var page = await PageAsync();
        await ClickAsync(page, "Plan");
        await planner.Begun;

        await DisposeComponentsAsync();

        await planner.Ended;
        Assert.Null(await Services.GetRequiredService<PlanningDesk>().LatestAsync(meal.Row, meal.Meal, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Stopped_before_anything_was_found_the_plan_that_there_was_stays()
    {
        var page = await PlannedAsync();
        planner.Hold();
        planner.Next = AlderLane.Plan with { Status = PlanStatus.None, Steps = [], Tends = [], Holds = [], Ovens = [], Confidence = null };
        clock.Advance(TimeSpan.FromSeconds(1));
        await ClickAsync(page, "Plan again");
        await page.WaitForStateAsync(() => page.FindAll(".progress").Count == 1);

        await ClickAsync(page, "Stop");

        await page.WaitForStateAsync(() => page.FindAll(".progress").Count == 0);
        Assert.Contains("Peel the potatoes", page.Find(".timetable").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("cannot do it", page.Markup, StringComparison.Ordinal);
        var (kept, _) = (await Services.GetRequiredService<PlanningDesk>().LatestAsync(meal.Row, meal.Meal, TestContext.Current.CancellationToken))!.Value;
        Assert.Equal(PlanStatus.Optimal, kept.Status);
    }

    [Fact]
    public async Task The_plan_goes_away_as_a_file_on_paper_and_into_a_calendar()
    {
        var page = await PlannedAsync();

        Assert.Equal(
            [$"meals/{meal.Row.Id}/plan/paper", $"meals/{meal.Row.Id}/plan/calendar.ics", $"meals/{meal.Row.Id}/plan/file"],
            page.FindAll(".ways-out a").SkipLast(1).Select(link => link.GetAttribute("href")));
    }

    [Fact]
    public async Task Starting_is_not_offered_before_there_is_a_plan()
    {
        Assert.True(Button(await PageAsync(), "Start cooking").HasAttribute("disabled"));
    }

    [Fact]
    public async Task A_wish_is_kept_at_once_and_the_plan_said_to_be_old()
    {
        var page = await PlannedAsync();

        await page.InvokeAsync(() => page.FindAll(".timetable button").Single(line => line.TextContent.Contains("Peel the potatoes", StringComparison.Ordinal)).Click());
        await page.WaitForStateAsync(() => page.FindAll(".panel").Count == 1);
        await ClickAsync(page, "Keep it at 11:05");

        await page.WaitForAssertionAsync(() => Assert.Contains("The meal has changed since this plan was made.", page.Find(".status").TextContent, StringComparison.Ordinal));
        var kept = await Services.GetRequiredService<MealBook>().OpenAsync(meal.Row.Id, TestContext.Current.CancellationToken);
        Assert.Equal(AlderLane.At("11:05"), kept!.Meal.Step(new("potatoes-peel")).At);
        Assert.True(Button(page, "Start cooking").HasAttribute("disabled"));
    }

    [Fact]
    public async Task Planning_again_says_what_changed()
    {
        var page = await PlannedAsync();
        planner.Next = AlderLane.Plan with { Steps = [.. AlderLane.Plan.Steps.Select(step => step.Step.Value == "potatoes-peel" ? step with { Start = step.Start + 10, End = step.End + 10 } : step)] };

        await ClickAsync(page, "Plan again");

        await page.WaitForAssertionAsync(() => Assert.Contains("Peel the potatoes: 11:15 instead of 11:05", page.Find(".changes").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_table_time_that_is_past_cannot_be_planned()
    {
        clock.SetUtcNow(AlderLane.At("15:01").Utc);

        var page = await PageAsync();

        Assert.True(Button(page, "Plan").HasAttribute("disabled"));
        Assert.Contains("Move the meal to another day", page.Find(".status").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Planning_again_begins_from_the_plan_on_the_page()
    {
        var page = await PlannedAsync();
        Assert.Null(planner.Previous);

        await ClickAsync(page, "Plan again");
        await page.WaitForStateAsync(() => planner.Previous is not null);

        Assert.Equal(AlderLane.Plan.Steps.Select(step => (step.Step, step.Start)), planner.Previous!.Steps.Select(step => (step.Step, step.Start)));
    }

    [Fact]
    public async Task A_surer_plan_is_offered_with_its_price_and_taken()
    {
        planner.Next = Sure(0.8, UsualPlan);
        var page = await PlannedAsync();
        Assert.Contains("on time on 80 of 100 days", page.Find(".how-sure summary").TextContent, StringComparison.Ordinal);
        planner.Next = Sure(0.96, UsualPlan with { Steps = [.. UsualPlan.Steps.Select(step => step with { Start = step.Start - 10, End = step.End - 10 })], Cost = UsualPlan.Cost with { Cushion = 10 } });

        await ClickAsync(page, "Find a surer plan");
        await page.WaitForAssertionAsync(() => Assert.Contains("on time on 96 of 100 days instead of 80", page.Find(".offer").TextContent, StringComparison.Ordinal));
        Assert.Contains("The price: the dishes wait", page.Find(".offer").TextContent, StringComparison.Ordinal);
        Assert.Equal(10, planner.Cushion);
        clock.Advance(TimeSpan.FromSeconds(1));
        await ClickAsync(page, "Take this plan");

        await page.WaitForAssertionAsync(() => Assert.Contains("on time on 96 of 100 days", page.Find(".how-sure summary").TextContent, StringComparison.Ordinal));
        var (kept, _) = (await Services.GetRequiredService<PlanningDesk>().LatestAsync(meal.Row, meal.Meal, TestContext.Current.CancellationToken))!.Value;
        Assert.Equal((0.96, 10), (kept.Confidence!.OnTimeWithin10, kept.Cost.Cushion));
    }

    [Fact]
    public async Task A_plan_is_leant_kept_so_and_its_cost_is_said()
    {
        var page = await PlannedAsync();
        planner.Next = AlderLane.Plan with { Cost = AlderLane.Plan.Cost with { Leans = Leans.CalmEnd } };
        clock.Advance(TimeSpan.FromSeconds(1));

        page.FindAll(".lean label").Single(label => label.TextContent.Trim() == "Calmer last half hour").QuerySelector("input")!.Change(true);
        await ClickAsync(page, "Plan again, leaning so");

        await page.WaitForAssertionAsync(() => Assert.Contains("On time, as before.", page.Find(".lean .cost").TextContent, StringComparison.Ordinal));
        Assert.Equal((Leans.CalmEnd, null), (planner.Leans, planner.Previous));
        Assert.Equal("Lean the plan: calmer last half hour", page.Find(".lean summary").TextContent);
        var (kept, _) = (await Services.GetRequiredService<PlanningDesk>().LatestAsync(meal.Row, meal.Meal, TestContext.Current.CancellationToken))!.Value;
        Assert.Equal(Leans.CalmEnd, kept.Cost.Leans);
    }

    [Fact]
    public async Task A_plan_that_is_sure_enough_is_said_to_be()
    {
        var page = await PlannedAsync();

        await ClickAsync(page, "Find a surer plan");

        await page.WaitForAssertionAsync(() => Assert.Contains("The plan is on time on 93 of 100 days already.", page.Find(".wish").TextContent, StringComparison.Ordinal));
    }

    static Plan UsualPlan => AlderLane.Plan;

    static Plan Sure(double chance, Plan plan) => plan with { Confidence = plan.Confidence! with { OnTimeWithin10 = chance } };

    async Task<KeptMeal> KeptAsync() => (await Services.GetRequiredService<MealBook>().OpenAsync(meal.Row.Id, TestContext.Current.CancellationToken))!;

    async Task<IRenderedComponent<PlanPage>> PlannedAsync()
    {
        var page = await PageAsync();
        planner.LetGo();
        await ClickAsync(page, "Plan");
        await page.WaitForStateAsync(() => page.FindAll(".timetable").Count == 1 && page.FindAll("button").Any(button => button.TextContent.Trim() == "Plan again"));
        return page;
    }

    async Task<IRenderedComponent<PlanPage>> PageAsync()
    {
        var page = Render<PlanPage>(parameters => parameters.Add(one => one.MealId, meal.Row.Id));
        await page.WaitForStateAsync(() => page.FindAll("h1").Count == 1);
        return page;
    }

    /// <summary>Finds and touches it in one turn of the page, between whose others it may be drawn anew.</summary>
    static Task ClickAsync(IRenderedComponent<PlanPage> page, string words) => page.InvokeAsync(() => Button(page, words).Click());

    static AngleSharp.Dom.IElement Button(IRenderedComponent<PlanPage> page, string words) =>
        page.FindAll("button").Single(button => button.TextContent.Trim() == words);
}
