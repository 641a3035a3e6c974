using System.Net;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief.Ovens;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Debrief;

public sealed class OvensPageTests : IAsyncDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;
    readonly AppFactory app = new();

    public ValueTask DisposeAsync() => app.DisposeAsync();

    /// <summary>The guided half hour of an oven that heats 8 °C a minute, settles at 165 and cools 4, as the page asks for it.</summary>
    async Task<Browser> MeasuredAsync()
    {
        var host = await app.HostAsync();
        using var begun = await host.PostFormAsync("/ovens/trials", new() { ["oven"] = "the oven" }, page: "/ovens");
        var (page, minute) = (begun.Headers.Location!.OriginalString, 0.0);
        double? shut = null, off = null;
        for (var guide = await GuideAsync(); guide.Part != OvenGuidePart.Enough; guide = await GuideAsync())
        {
            if (guide.NextReading is null)
            {
                await WaitAsync(0.6);
                var isDoor = guide.Part == OvenGuidePart.OpenDoor;
                (shut, off) = (isDoor ? minute : shut, isDoor ? off : minute);
                await PostAsync(isDoor ? "door" : "off", "1");
                continue;
            }

            var due = DateTimeOffset.FromUnixTimeMilliseconds(guide.NextReading.Value) - app.Clock.GetUtcNow();
            await WaitAsync(Math.Max(0, due.TotalMinutes));
            var celsius = off is { } cold ? 165 - (4 * (minute - cold)) : shut is { } door ? Math.Min(165, 130 + (15 * (minute - door))) : Math.Min(165, 20 + (8 * minute));
            await PostAsync("celsius", FormattableString.Invariant($"{celsius:0}"));
            Assert.InRange(minute, 0, 60);
        }

        await PostAsync("end", "1");
        return host;

        async Task<OvenGuide> GuideAsync()
        {
            await using var db = app.NewDb();
            return OvenGuide.Of(await db.Set<OvenTrialRow>().SingleAsync(Stop), app.Clock.GetUtcNow().ToUnixTimeMilliseconds());
        }

        Task WaitAsync(double minutes)
        {
            app.Clock.Leap(TimeSpan.FromMinutes(minutes));
            minute += minutes;
            return Task.CompletedTask;
        }

        async Task PostAsync(string field, string value)
        {
            using var answer = await host.PostFormAsync(page, new() { [field] = value, [field == "celsius" ? "read" : "also"] = "1" }, page);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }
    }

    [Fact]
    public async Task The_guided_half_hour_finds_what_the_oven_does()
    {
        await MeasuredAsync();
        var oven = (await app.Get<LearnedOvens>().AllAsync(Stop)).Single(one => one.Key == "the oven");
        Assert.Equal((8m, 4m, 15), (oven.Offered.HeatUpPerMinute, oven.Offered.CoolDownPerMinute, oven.Offered.ReadsHighBy));
        Assert.InRange(oven.Learned.RecoveryMinutes!.Value.Value, 1.5, 3);
        await using var db = app.NewDb();
        var took = (await db.Set<OvenTrialRow>().SingleAsync(Stop)).Trial().Readings[^1].Minute;
        Assert.InRange(took, 30, 42);
    }

    [Fact]
    public async Task What_was_learned_is_planned_with_when_the_cook_says_so_and_can_be_taken_back()
    {
        var host = await MeasuredAsync();
        var book = app.Get<MealBook>();
        var before = (await book.AllAsync(Stop)).Single(meal => meal.Meal.Kitchen.Ovens[0].Name == "The oven");
        Assert.Equal(12m, before.Meal.Kitchen.Ovens[0].HeatUpPerMinute);

        using var used = await host.PostFormAsync("/ovens/use", new() { ["oven"] = "the oven" }, page: "/ovens");
        var after = (await book.OpenAsync(before.Row.Id, Stop))!;
        var oven = after.Meal.Kitchen.Ovens[0];
        Assert.Equal((8m, 4m, 15), (oven.HeatUpPerMinute, oven.CoolDownPerMinute, oven.ReadsHighBy));
        Assert.Equal(before.Row.Document, after.Row.Document);
        Assert.True(after.Row.Version > before.Row.Version);

        using var back = await host.PostFormAsync("/ovens/use", new() { ["oven"] = "the oven", ["back"] = "1" }, page: "/ovens");
        Assert.Equal(12m, (await book.OpenAsync(before.Row.Id, Stop))!.Meal.Kitchen.Ovens[0].HeatUpPerMinute);
    }

    [Fact]
    public async Task It_is_listed_taken_away_and_deleted_with_all_that_was_learned()
    {
        var host = await MeasuredAsync();
        using var used = await host.PostFormAsync("/ovens/use", new() { ["oven"] = "the oven" }, page: "/ovens");
        Assert.Contains("planned with what was learned", await host.ReadAsync("/learned"), StringComparison.Ordinal);
        Assert.Contains("\"coolDownPerMinute\": 4", await host.ReadAsync("/learned/file"), StringComparison.Ordinal);

        using var gone = await host.PostFormAsync("/learned/delete", new() { ["all"] = "1" }, page: "/learned");
        await using var db = app.NewDb();
        Assert.False(await db.Set<OvenTrialRow>().AnyAsync(Stop) || await db.Set<OvenFigureRow>().AnyAsync(Stop));
    }

    [Fact]
    public async Task A_reading_no_thermometer_shows_is_refused_in_words_and_the_last_one_can_be_taken_back()
    {
        var host = await app.HostAsync();
        using var begun = await host.PostFormAsync("/ovens/trials", new() { ["oven"] = "the oven" }, page: "/ovens");
        var page = begun.Headers.Location!.OriginalString;
        using var wrong = await host.PostFormAsync(page, new() { ["read"] = "1", ["celsius"] = "1200" }, page);
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
        using var word = await host.PostFormAsync(page, new() { ["read"] = "1", ["celsius"] = "hot" }, page);
        Assert.Equal(HttpStatusCode.BadRequest, word.StatusCode);
        using var good = await host.PostFormAsync(page, new() { ["read"] = "1", ["celsius"] = "20,5" }, page);
        await using var db = app.NewDb();
        Assert.Equal(20.5, (await db.Set<OvenTrialRow>().AsNoTracking().SingleAsync(Stop)).Trial().Readings.Single().Celsius);
        using var back = await host.PostFormAsync(page, new() { ["undo"] = "1" }, page);
        Assert.Empty((await db.Set<OvenTrialRow>().AsNoTracking().SingleAsync(Stop)).Trial().Readings);
    }

    [Fact]
    public async Task Three_entries_on_the_board_in_either_scale_are_offered_and_used_only_when_the_cook_says_so()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "stuff" });
        kitchen.House.Clock.LeapTo(Clock(12, 40));
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "roast" });
        kitchen.House.Clock.LeapTo(Clock(13, 10));
        // The fan's dial stands at 160.
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "readOven", oven = "oven", celsius = 145 })).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "readOven", oven = "oven", fahrenheit = 293 })).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "readOven", oven = "oven", celsius = 20 })).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "takeBackOvenReading", oven = "oven" })).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "readOven", oven = "oven", celsius = 144.5 })).Accepted);
        await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" });

        var learned = kitchen.House.Get<LearnedOvens>();
        var oven = (await learned.AllAsync(Stop)).Single(one => one.Key == "oven");
        Assert.Equal((15, true), (oven.Offered.ReadsHighBy, oven.HasNews));
        Assert.Equal(oven.Learned.ReadsHighBy, (await learned.AllAsync(Stop)).Single(one => one.Key == "oven").Learned.ReadsHighBy);
        Assert.Equal(0, (await kitchen.House.Get<MealBook>().OpenAsync(LiveKitchen.MealRow, Stop))!.Meal.Kitchen.Ovens[0].ReadsHighBy);
        Assert.Contains("shows 15 °C more than it is", WebUtility.HtmlDecode(await kitchen.Host.ReadAsync("/ovens")), StringComparison.Ordinal);

        using var used = await kitchen.Host.PostFormAsync("/ovens/use", new() { ["oven"] = "oven" }, page: "/ovens");
        Assert.Equal(15, (await kitchen.House.Get<MealBook>().OpenAsync(LiveKitchen.MealRow, Stop))!.Meal.Kitchen.Ovens[0].ReadsHighBy);
        using var back = await kitchen.Host.PostFormAsync("/ovens/use", new() { ["oven"] = "oven", ["back"] = "1" }, page: "/ovens");
        Assert.Equal(0, (await kitchen.House.Get<MealBook>().OpenAsync(LiveKitchen.MealRow, Stop))!.Meal.Kitchen.Ovens[0].ReadsHighBy);
    }

    [Fact]
    public void A_guess_by_joints_is_called_one() =>
        Assert.Equal("perhaps shows 25 °C more than it is: 5 joints roasted as if it did. Stand a thermometer in it before you trust this", OvenWords.Guessed(25, 5));
}
