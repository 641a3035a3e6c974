using System.Net;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief;
using CookAlong.Web.Features.Meals;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Household;

/// <summary>The two invented meals that a new household finds to look back on.</summary>
public sealed class EarlierMealsTests : IAsyncDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;
    readonly AppFactory app = new() { HasEarlierMeals = true };

    public ValueTask DisposeAsync() => app.DisposeAsync();

    [Fact]
    public async Task Each_can_be_looked_back_on_with_what_slipped_what_was_said_and_that_it_is_invented()
    {
        var host = await app.HostAsync();
        foreach (var run in EarlierMeals.Invented.Keys)
        {
            var page = WebUtility.HtmlDecode(await host.ReadAsync($"/cook/{run}/debrief"));
            Assert.Contains("Nobody cooked this", page, StringComparison.Ordinal);
            Assert.Contains("It took ", page, StringComparison.Ordinal);
            Assert.Contains("Cook it again", page, StringComparison.Ordinal);
            Assert.DoesNotContain("Not everything was finished", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_first_day_already_knows_whose_peeling_takes_longer_than_written()
    {
        var host = await app.HostAsync();
        var pace = new HouseholdPace(await app.Get<LearnedTimes>().TimingsAsync(Stop));
        Assert.InRange(pace.Kinds.Single(kind => kind.Name == "peel").Factor, 1.1, 1.6);
        Assert.Contains("invented", await host.ReadAsync("/learned"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task They_go_with_all_that_is_known_of_them_and_what_else_there_is_stays()
    {
        var host = await app.HostAsync();
        using var answer = await host.PostFormAsync("/learned/delete", new() { ["invented"] = "1" }, page: "/learned");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);

        await using var db = app.NewDb();
        Assert.Equal(2, await db.Meals.CountAsync(Stop));
        Assert.False(await db.Set<RunRow>().AnyAsync(Stop) || await db.Set<RunEventRow>().AnyAsync(Stop) || await db.Set<DebriefNoteRow>().AnyAsync(Stop)
            || await db.Set<LeftoverRow>().AnyAsync(Stop) || await db.Plans.AnyAsync(Stop));
        Assert.DoesNotContain("Delete the invented meals", await host.ReadAsync("/learned"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Added_again_they_are_there_once()
    {
        await app.HostAsync();
        Assert.Empty(await app.Get<EarlierMeals>().AddAsync(Stop));
        await using var db = app.NewDb();
        Assert.Equal(EarlierMeals.Invented.Count, await db.Set<RunRow>().CountAsync(Stop));
    }
}
