using System.Net;
using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Debrief;

/// <summary>From a run's log to what the next meal is planned with, and back.</summary>
public sealed class LearnedTimesTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_learned_is_offered_and_changes_nothing_until_it_is_accepted()
    {
        await using var lunch = await CookedLunch.CookAsync();

        var page = await lunch.ReadAsync();

        Assert.Contains("Written 20 minutes; here ", page, StringComparison.Ordinal);
        Assert.Contains("Use it from now on", page, StringComparison.Ordinal);
        Assert.Equal(20, await StuffingAsync(lunch));
        Assert.DoesNotContain("Use it from now on", await lunch.ReadAsync(lunch.Ivo), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Accepted_it_is_planned_with_wherever_the_dish_is_and_its_plans_count_as_old()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.PostAsync("learn", new() { ["step"] = "stuff" });

        Assert.InRange(await StuffingAsync(lunch), 21, 28);
        Assert.Contains("Planned so from now on", await lunch.ReadAsync(), StringComparison.Ordinal);
        await using var db = lunch.Kitchen.House.NewDb();
        Assert.Equal(2, (await db.Meals.SingleAsync(row => row.Id == LiveKitchen.MealRow, Stop)).Version);

        // A copy has the same dish; its file says what the recipe says.
        var book = lunch.Kitchen.House.Get<MealBook>();
        var copy = Assert.IsType<MealEdit.Kept>(await book.CopyAsync((await book.OpenAsync(LiveKitchen.MealRow, Stop))!, Stop)).Meal;
        Assert.InRange(Stuffing((await book.OpenAsync(copy.Row.Id, Stop))!.Meal), 21, 28);
        Assert.Equal(20, Stuffing(MealFile.Read(copy.Row.Document).Meal!));
    }

    [Fact]
    public async Task It_is_listed_taken_away_and_deleted_on_one_page()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.PostAsync("learn", new() { ["step"] = "stuff" });
        var host = lunch.Kitchen.Host;

        Assert.Contains("stuff", await host.ReadAsync("/learned"), StringComparison.Ordinal);
        using var json = JsonDocument.Parse(await host.ReadAsync("/learned/file"));
        Assert.Equal("stuff", Assert.Single(json.RootElement.GetProperty("used").EnumerateArray()).GetProperty("step").GetString());
        Assert.Contains(json.RootElement.GetProperty("timings").EnumerateArray(), one => one.GetProperty("minutes").GetDouble() == 32);

        using var deleted = await host.PostFormAsync("/learned/delete", new() { ["dish"] = "goose", ["text"] = "stuff" }, page: "/learned");
        Assert.Equal(HttpStatusCode.Redirect, deleted.StatusCode);
        Assert.Equal(20, await StuffingAsync(lunch));
        Assert.Contains("Nothing yet", await host.ReadAsync("/learned"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meal_is_forgotten_alone_and_everything_at_once()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var (host, times) = (lunch.Kitchen.Host, lunch.Kitchen.House.Get<LearnedTimes>());
        await lunch.PostAsync("learn", new() { ["step"] = "stuff" });

        using var one = await host.PostFormAsync("/learned/delete", new() { ["run"] = $"{lunch.Kitchen.Run}" }, page: "/learned");
        Assert.Empty(await times.TimingsAsync(Stop));
        Assert.Single(await times.UsedAsync(Stop));
        Assert.Contains("No work of hands was timed", await lunch.ReadAsync(), StringComparison.Ordinal);

        using var all = await host.PostFormAsync("/learned/delete", new() { ["all"] = "1" }, page: "/learned");
        Assert.Empty(await times.UsedAsync(Stop));
        Assert.Equal(20, await StuffingAsync(lunch));
    }

    [Theory]
    [InlineData("run", "no run")]
    [InlineData("text", "stuff")]
    public async Task What_cannot_be_read_deletes_nothing(string field, string value)
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.PostAsync("learn", new() { ["step"] = "stuff" });

        using var answer = await lunch.Kitchen.Host.PostFormAsync("/learned/delete", new() { [field] = value }, page: "/learned");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Single(await lunch.Kitchen.House.Get<LearnedTimes>().UsedAsync(Stop));
        Assert.NotEmpty(await lunch.Kitchen.House.Get<LearnedTimes>().TimingsAsync(Stop));
    }

    [Fact]
    public async Task A_meal_is_listed_under_its_own_day_not_that_of_another_zone()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.RewriteAsync("\"timeZone\":\"UTC\"", "\"timeZone\":\"Pacific/Auckland\"");

        Assert.Contains("21 December 2026", await lunch.Kitchen.Host.ReadAsync("/learned"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task From_the_debrief_it_is_taken_back()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.PostAsync("learn", new() { ["step"] = "stuff" });
        await lunch.PostAsync("learn", new() { ["step"] = "stuff", ["back"] = "1" });
        Assert.Equal(20, await StuffingAsync(lunch));
        using var unknown = await lunch.Kitchen.Host.PostFormAsync($"{lunch.Address}/learn", new() { ["step"] = "nothing" }, page: lunch.Address);
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }

    [Fact]
    public async Task A_run_that_was_planned_with_it_is_still_held_against_the_recipe()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.PostAsync("learn", new() { ["step"] = "stuff" });
        var kitchen = lunch.Kitchen;
        await using (var db = kitchen.House.NewDb())
        {
            db.Add(new PlanRow { Id = new Guid(9, 9, 9, new byte[8]), Meal = LiveKitchen.MealRow, MealVersion = 2, Document = PlanFile.Write(SmallMeal.Plan, SmallMeal.Meal), MadeAt = 1 });
            await db.SaveChangesAsync(Stop);
        }

        kitchen.House.Clock.LeapTo(SmallMeal.Clock(16));
        var again = new LiveKitchenRun(kitchen, await kitchen.StartAsync());

        await again.StuffAsync(minutes: 30);

        var timings = (await kitchen.House.Get<LearnedTimes>().TimingsAsync(Stop)).Where(timing => timing.Step.Text == "stuff").ToArray();
        Assert.Equal([(20.0, 30.0), (20.0, 32.0)], timings.Select(timing => (timing.Written.Likely, timing.Minutes)));
    }

    [Fact]
    public async Task A_rehearsal_teaches_nothing()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await using (var db = lunch.Kitchen.House.NewDb())
        {
            // As if what was cooked had been played.
            await db.Set<RunRow>().ExecuteUpdateAsync(set => set.SetProperty(run => run.Rate, 60).SetProperty(run => run.Shows, run => run.Began), Stop);
        }

        Assert.Empty(await lunch.Kitchen.House.Get<LearnedTimes>().TimingsAsync(Stop));
    }

    static int Stuffing(Meal meal) => meal.Step(SmallMeal.Stuff).Way.Minutes.Likely;

    static async Task<int> StuffingAsync(CookedLunch lunch) => Stuffing((await lunch.Kitchen.House.Get<MealBook>().OpenAsync(LiveKitchen.MealRow, Stop))!.Meal);

    sealed class LiveKitchenRun(LiveKitchen kitchen, Guid run)
    {
        public async Task StuffAsync(int minutes)
        {
            foreach (var command in new object[] { new { kind = "startStep", step = "stuff" }, new { kind = "finishStep", step = "stuff" }, new { kind = "endRun" } })
            {
                using var answer = await kitchen.Host.PostJsonAsync($"/cook/{run}/taps", new { runId = run, commandId = LiveKitchen.NewCommand(), saw = 0, command });
                Assert.Contains("\"accepted\":true", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
                kitchen.House.Clock.Leap(TimeSpan.FromMinutes(minutes));
            }
        }
    }
}
