using System.Net;
using System.Text.Json;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief.Again;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Debrief;

public sealed class DebriefPageTests
{
    [Fact]
    public async Task After_the_end_the_run_leads_to_what_slipped_and_what_it_cost()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var kitchen = lunch.Kitchen;
        Assert.Contains($"/cook/{kitchen.Run}/debrief", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}"), StringComparison.Ordinal);

        var page = await lunch.ReadAsync();

        Assert.Contains("It took 12 minutes longer. It was late from 12:40 and noticed at 12:52, when it was done.", page, StringComparison.Ordinal);
        Assert.Contains("Without it the table would have been ready 7 minutes earlier; the rest went into 5 minutes spare before Main came to the table.", page, StringComparison.Ordinal);
        Assert.Contains("The table was 7 minutes late.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task How_fast_whose_hands_are_is_told_to_the_household_alone()
    {
        await using var lunch = await CookedLunch.CookAsync();
        Assert.Contains("What your hands take", await lunch.ReadAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("What your hands take", await lunch.ReadAsync(lunch.Ivo), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_meal_leads_to_the_last_time_it_was_really_cooked()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var kitchen = lunch.Kitchen;
        using var answer = await kitchen.Host.GetAsync($"/meals/{LiveKitchen.MealRow}/debrief");
        Assert.Equal($"/cook/{kitchen.Run}/debrief", answer.Headers.Location?.OriginalString);
        Assert.Contains("has not been cooked", await kitchen.Host.ReadAsync($"/meals/{Guid.Empty}/debrief"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_it_is_cooked_there_is_nothing_to_look_back_on()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var answer = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}/debrief");
        Assert.Equal($"/cook/{kitchen.Run}", answer.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task A_verdict_and_a_note_are_kept_shown_to_helpers_and_can_be_taken_back()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var kitchen = lunch.Kitchen;
        await lunch.PostAsync("notes", new() { ["verdict-goose"] = "never", ["note-goose"] = "too much <b>fat</b>", ["note-"] = "begin earlier" });

        var seen = await lunch.ReadAsync(lunch.Ivo);
        Assert.Contains("Never again", seen, StringComparison.Ordinal);
        Assert.Contains("too much <b>fat</b>", seen, StringComparison.Ordinal);
        Assert.Contains("begin earlier", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("<form", seen, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;fat", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/debrief"), StringComparison.Ordinal);

        await lunch.PostAsync("notes", new() { ["verdict-goose"] = "", ["was-verdict-goose"] = "never", ["was-note-goose"] = "too much <b>fat</b>", ["was-note-"] = "begin earlier" });
        await using var db = kitchen.House.NewDb();
        Assert.Empty(await db.Set<DebriefNoteRow>().ToListAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task An_older_page_takes_nothing_back_that_was_said_meanwhile()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var older = new Dictionary<string, string> { ["verdict-goose"] = "less", ["note-goose"] = "", ["verdict-beans"] = "", ["note-beans"] = "", ["was-verdict-goose"] = "", ["was-note-goose"] = "", ["was-verdict-beans"] = "", ["was-note-beans"] = "" };
        await lunch.PostAsync("notes", new() { ["verdict-beans"] = "more", ["note-goose"] = "drier than last year" });

        await lunch.PostAsync("notes", older);

        await using var db = lunch.Kitchen.House.NewDb();
        Assert.Equal(
            [("beans", "more", ""), ("goose", "less", "drier than last year")],
            (await db.Set<DebriefNoteRow>().OrderBy(note => note.Dish).ToListAsync(TestContext.Current.CancellationToken)).Select(note => (note.Dish, note.Verdict, note.Note)));
    }

    [Fact]
    public async Task The_page_says_what_it_showed()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.PostAsync("notes", new() { ["verdict-goose"] = "less", ["note-goose"] = "drier" });

        var page = await lunch.ReadAsync();

        Assert.Contains("""<input type="hidden" name="was-verdict-goose" value="less" />""", page, StringComparison.Ordinal);
        Assert.Contains("""<input type="hidden" name="was-note-goose" value="drier" />""", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_steps_of_a_dish_with_the_same_words_are_looked_back_on()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.RewriteAsync("\"text\":\"carve\"", "\"text\":\"stuff\"");

        Assert.Contains("Looking back on Small lunch", await lunch.ReadAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_hosts_write_and_only_what_there_is_to_say()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var kitchen = lunch.Kitchen;
        using var unknown = await kitchen.Host.PostFormAsync($"/cook/{kitchen.Run}/debrief/notes", new() { ["verdict-goose"] = "delicious" }, page: "/sign-in");
        Assert.Equal(HttpStatusCode.BadRequest, unknown.StatusCode);
        using var refused = await lunch.Ivo.PostFormAsync($"/cook/{kitchen.Run}/debrief/notes", new() { ["verdict-goose"] = "more" }, page: "/sign-in");
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        using var bare = await kitchen.Host.PostAsync($"/cook/{kitchen.Run}/debrief/notes", new() { ["verdict-goose"] = "more" });
        Assert.Equal(HttpStatusCode.BadRequest, bare.StatusCode);
    }

    [Fact]
    public async Task It_is_taken_away_as_json_and_as_a_table_in_which_a_note_is_no_formula()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var kitchen = lunch.Kitchen;
        await lunch.PostAsync("notes", new() { ["verdict-goose"] = "less", ["note-goose"] = "=1+1" });

        using var json = JsonDocument.Parse(await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/debrief.json"));
        Assert.Equal(7, json.RootElement.GetProperty("courses")[0].GetProperty("lateMinutes").GetInt32());
        Assert.Equal("stuff", json.RootElement.GetProperty("slips")[0].GetProperty("step").GetString());

        var table = await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/debrief.csv");
        var line = table.Split('\n').Single(one => one.StartsWith("goose,stuff,", StringComparison.Ordinal));
        Assert.Contains("2026-12-20 12:20,2026-12-20 12:40,2026-12-20 12:20,2026-12-20 12:52", line, StringComparison.Ordinal);
        Assert.DoesNotContain(",=1+1", line, StringComparison.Ordinal);
        Assert.DoesNotContain(",\"=1+1", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_cooked_again_on_another_day_with_what_was_said_in_view()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var host = lunch.Kitchen.Host;
        await lunch.PostAsync("notes", new() { ["verdict-beans"] = "more", ["note-"] = "begin earlier" });

        using var past = await host.PostFormAsync($"/cook/{lunch.Kitchen.Run}/again", new() { ["day"] = "2026-12-01" }, page: lunch.Address);
        Assert.Equal(HttpStatusCode.BadRequest, past.StatusCode);
        using var answer = await host.PostFormAsync($"/cook/{lunch.Kitchen.Run}/again", new() { ["day"] = "2027-12-19" }, page: lunch.Address);

        var again = Guid.Parse(answer.Headers.Location!.OriginalString.Split('/')[^1]);
        var meal = (await lunch.Kitchen.House.Get<MealBook>().OpenAsync(again, TestContext.Current.CancellationToken))!.Meal;
        Assert.Equal("2027-12-19 15:00Z", $"{meal.LastTableTime}");
        var said = await lunch.Kitchen.House.Get<LastTimes>().OfAsync(again, meal, TestContext.Current.CancellationToken);
        Assert.Equal("beans", Assert.Single(said.Dishes, dish => dish.Verdict == "more").Dish);
        Assert.Equal(["begin earlier", "Make more of beans"], said.Differently.Select(one => one.Item));
        using var back = await host.GetAsync($"/meals/{again}/debrief");
        Assert.Equal(lunch.Address, back.Headers.Location?.OriginalString);
        await lunch.Kitchen.House.Get<MealBook>().DeleteAsync(again, TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Nobody_from_outside_reads_it()
    {
        await using var lunch = await CookedLunch.CookAsync();
        var kitchen = lunch.Kitchen;
        var stranger = kitchen.House.NewBrowser();
        foreach (var way in new[] { $"/cook/{kitchen.Run}/debrief", $"/cook/{kitchen.Run}/debrief.json", $"/cook/{kitchen.Run}/debrief.csv", "/learned", "/learned/file" })
        {
            using var answer = await stranger.GetAsync(way);
            Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
        }
    }
}
