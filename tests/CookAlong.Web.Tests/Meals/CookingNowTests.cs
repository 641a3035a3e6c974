using Bunit;
using CookAlong.Intake.MealFiles;
using CookAlong.Planner.Quick;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Household;
using CookAlong.Web.Tests.Plans;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using MudBlazor.Services;
using TestContext = Xunit.TestContext;

namespace CookAlong.Web.Tests.Meals;

/// <summary>Whoever opens a page of planning while a meal is cooked finds the way back to the kitchen, however late it is.</summary>
public sealed class CookingNowTests : BunitContext, IAsyncLifetime
{
    readonly HouseholdFile household = new();
    readonly FakeTimeProvider clock = new(AlderLane.At("09:00").Utc);
    Guid meal;

    public CookingNowTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        this.AddPace(clock);
        Services.AddMudServices();
        Services.AddSingleton<TimeProvider>(clock);
        Services.AddSingleton(new MealBook(household, clock));
        Services.AddSingleton(new EventLog(household));
        Services.AddSingleton(new HouseholdRegion(household));
        Services.AddSingleton(new PlanningDesk(new QuickPlanner(), household, clock));
        SetRendererInfo(new("Server", true));
    }

    public async ValueTask InitializeAsync()
    {
        var book = Services.GetRequiredService<MealBook>();
        meal = ((MealEdit.Kept)await book.AddAsync(MealFile.Write(AlderLane.Meal), fromNow: false, TestContext.Current.CancellationToken)).Meal.Row.Id;
    }

    public new async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        household.Dispose();
    }

    [Fact]
    public async Task A_meal_past_its_table_time_that_is_still_cooked_leads_to_its_kitchen()
    {
        var run = await RunAsync(ended: false);
        clock.Advance(TimeSpan.FromHours(12));

        var card = (await MealsAsync()).Find(".meal");
        Assert.Contains("It is being cooked", card.TextContent, StringComparison.Ordinal);
        Assert.Equal($"cook/{run}", card.QuerySelector(".main")!.GetAttribute("href"));

        var page = Render<PlanPage>(parameters => parameters.Add(one => one.MealId, meal));
        await page.WaitForAssertionAsync(() => Assert.Contains("It is being cooked", page.Find(".status").TextContent, StringComparison.Ordinal));
        Assert.Equal($"cook/{run}", page.Find(".actions a").GetAttribute("href"));
        Assert.DoesNotContain("Start cooking", page.Find(".actions").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meal_that_was_cooked_leads_to_looking_back()
    {
        var run = await RunAsync(ended: true);
        clock.Advance(TimeSpan.FromHours(12));

        Assert.Equal($"cook/{run}/debrief", (await MealsAsync()).Find(".meal .main").GetAttribute("href"));
    }

    [Fact]
    public async Task A_rehearsal_is_no_cooking()
    {
        await RunAsync(ended: false, rate: 60);

        Assert.Equal($"meals/{meal}/plan", (await MealsAsync()).Find(".meal .main").GetAttribute("href"));
    }

    async Task<IRenderedComponent<MealsPage>> MealsAsync()
    {
        var page = Render<MealsPage>();
        await page.WaitForStateAsync(() => page.FindAll(".meal").Count == 1);
        return page;
    }

    async Task<Guid> RunAsync(bool ended, int? rate = null)
    {
        var now = clock.GetUtcNow().ToUnixTimeMilliseconds();
        var row = new RunRow { Id = Guid.CreateVersion7(clock.GetUtcNow()), Meal = meal, Name = "Lunch", Began = now, Ended = ended ? now + 1 : null, Rate = rate };
        await using var db = household.CreateDbContext();
        db.Add(row);
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        return row.Id;
    }
}
