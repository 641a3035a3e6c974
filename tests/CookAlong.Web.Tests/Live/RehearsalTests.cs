using System.Net;
using System.Text.Json;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Live;

public sealed class RehearsalTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("")]
    [InlineData("/me")]
    [InlineData("/log")]
    [InlineData("/wall")]
    [InlineData("/device")]
    [InlineData("/invite")]
    [InlineData("/board-part")]
    public async Task It_is_marked_on_every_screen_and_the_meal_is_not(string page)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var rehearsal = await RehearseAsync(kitchen, 30);
        var html = WebUtility.HtmlDecode(await kitchen.Host.ReadAsync($"/cook/{rehearsal}{page}"));
        Assert.Contains("class=\"rehearsal\"", html, StringComparison.Ordinal);
        Assert.Contains("30×", html, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"rehearsal\"", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}{page}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_meal_and_its_rehearsal_do_not_stand_in_each_other_s_way()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var rehearsal = await RehearseAsync(kitchen, 60);
        Assert.NotEqual(kitchen.Run, rehearsal);
        Assert.Equal(rehearsal, await RehearseAsync(kitchen, 60));
        Assert.Equal(kitchen.Run, await kitchen.StartAsync());
    }

    [Theory]
    [InlineData("0")]
    [InlineData("121")]
    public async Task A_speed_that_no_rehearsal_has_is_refused(string rate)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var answer = await kitchen.Host.PostFormAsync($"/meals/{LiveKitchen.MealRow}/rehearsals", new() { ["rate"] = rate }, page: "/sign-in");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Its_screens_count_by_its_own_clock_and_keep_it_after_a_restart()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var rehearsal = await RehearseAsync(kitchen, 10);
        await using var tablet = kitchen.Connect(kitchen.Host);
        await tablet.StartAsync(Stop);
        await tablet.InvokeAsync<Entered>("Enter", rehearsal, Stop);
        Assert.Equal(Clock(12, 19).ToUnixTimeMilliseconds(), await tablet.InvokeAsync<long>("Clock", Stop));
        kitchen.House.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(Clock(12, 29).ToUnixTimeMilliseconds(), await tablet.InvokeAsync<long>("Clock", Stop));

        await using var next = await kitchen.RestartedAsync();
        await next.House.Get<LiveRuns>().FindAsync(new RunId(rehearsal));
        Assert.Equal(Clock(12, 29), next.House.Get<RunClocks>().Now(new RunId(rehearsal)));
    }

    [Fact]
    public async Task It_is_cooked_by_itself_ends_by_itself_and_its_log_says_what_it_was()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var rehearsal = await RehearseAsync(kitchen, 120);
        var live = (await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(rehearsal)))!;
        for (var look = 0; look < 5000 && live.Current.Ended is null; look++)
        {
            kitchen.House.Clock.Advance(TimeSpan.FromMilliseconds(250));
            await Task.Yield();
            await live.SendAsync(new Tap(new CommandId(LiveKitchen.NewCommand()), new PersonId(Guid.Empty), new RunCommand.GoOn()));
        }

        Assert.NotNull(live.Current.Ended);
        Assert.All(live.Current.Meal.Steps, step => Assert.NotNull(live.Current.StateOf(step.Id).Finished));
        using var log = JsonDocument.Parse(await kitchen.Host.ReadAsync($"/cook/{rehearsal}/log.json"));
        Assert.Equal(120, log.RootElement.GetProperty("rehearsalRate").GetInt32());
    }

    [Fact]
    public async Task It_calls_nobody_beyond_the_page()
    {
        using var hook = new Receiver();
        await using var kitchen = await LiveKitchen.StartedAsync(services =>
        {
            var settings = (HouseSettings)services.Last(one => one.ServiceType == typeof(HouseSettings)).ImplementationInstance!;
            services.AddSingleton(settings with { Webhook = new Uri("http://hook.example/calls") });
            services.AddHttpClient(Webhook.Client).ConfigurePrimaryHttpMessageHandler(() => hook);
        });
        var rehearsal = await RehearseAsync(kitchen, 60);
        var run = (await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(rehearsal)))!.Current;

        // The oven was to be turned on at 12:20, and nobody has answered.
        await kitchen.House.Get<OutwardCalls>().LookAsync(run, Board.Of(run, Clock(12, 20).AddSeconds(-1).AddMinutes(5)), Stop);
        await using var db = kitchen.House.NewDb();
        Assert.False(await db.Set<DeliveryRow>().AnyAsync(row => row.Run == rehearsal, Stop));
        using var test = await kitchen.Host.PostJsonAsync($"/cook/{rehearsal}/ways-out/test", new { });
        Assert.Equal(HttpStatusCode.NotFound, test.StatusCode);
        Assert.Empty(hook.Came);
    }

    static async Task<Guid> RehearseAsync(LiveKitchen kitchen, int rate)
    {
        using var answer = await kitchen.Host.PostFormAsync($"/meals/{LiveKitchen.MealRow}/rehearsals", new() { ["rate"] = $"{rate}" }, page: "/sign-in");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return Guid.Parse(answer.Headers.Location!.OriginalString.Split('/')[2]);
    }
}
