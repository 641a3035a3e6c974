using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Live;

public sealed class CallClockTests
{
    // Only for a test that fails: a busy machine may take its time.
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_call_rings_when_it_is_due_and_is_marked_so()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var tablet = kitchen.Connect(kitchen.Host);
        var rung = new TaskCompletionSource();
        tablet.On<CallNews>("Ring", call =>
        {
            if (call.CallId == "in:roast")
            {
                rung.TrySetResult();
            }
        });
        await tablet.StartAsync(Stop);
        await tablet.InvokeAsync<Entered>("Enter", kitchen.Run, Stop);
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(25));
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        await kitchen.TickUntilAsync(rung.Task);
        await using var db = kitchen.House.NewDb();
        Assert.NotNull(await db.Set<CallRow>().SingleAsync(row => row.Call == "in:roast", Stop));
    }

    [Fact]
    public async Task Acknowledging_on_one_screen_silences_the_others()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var tablet = kitchen.Connect(kitchen.Host);
        var silenced = new TaskCompletionSource<string>();
        tablet.On<CallNews>("Silence", call => silenced.TrySetResult(call.CallId));
        await tablet.StartAsync(Stop);
        await tablet.InvokeAsync<Entered>("Enter", kitchen.Run, Stop);
        var ivo = await kitchen.JoinAsync("Ivo");
        Assert.True((await kitchen.TapAsync(ivo, new { kind = "acknowledge", call = "begin:stuff" })).Accepted);
        Assert.Equal("begin:stuff", await silenced.Task.WaitAsync(Patience, Stop));
    }
}
