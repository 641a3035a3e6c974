using System.Security.Claims;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Shopping;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>
/// The line to the screens. The cookie says who connects; which run they may see is asked again at every call, because a
/// connection outlives what it was let in for. Another site's page is turned away before it gets here.
/// </summary>
[Authorize]
public sealed class LiveHub(LiveRuns runs, IncomingTaps taps, OpenScreens open, Sessions sessions, Boards boards, RunClocks clocks, ShoppingDoor shopping, Paces paces, TimeProvider time) : Hub
{
    const string Here = "run";

    public override Task OnConnectedAsync()
    {
        open.Add(Visitor, Context);
        return base.OnConnectedAsync();
    }

    public override Task OnDisconnectedAsync(Exception? exception)
    {
        open.Remove(Context);
        return base.OnDisconnectedAsync(exception);
    }

    /// <summary>Joins this screen to the run's news and says where the run stands.</summary>
    public async Task<Entered> Enter(Guid runId)
    {
        await CheckSessionAsync();
        var id = new RunId(runId);
        if (!Visitor.MaySee(id) || await runs.FindAsync(id) is not { } live || await taps.AdmitAsync(live, Visitor, Context.User?.FindFirstValue(ClaimTypes.Name)) is not { } who)
        {
            throw new HubException("You are not in this kitchen. Ask the host for a code and join.");
        }

        open.Enter(id, Context);
        Context.Items[Here] = id;
        await Groups.AddToGroupAsync(Context.ConnectionId, LiveScreens.GroupOf(id));
        var run = live.Current;
        return new Entered(run.Sequence, Clock(), Wire.Calls(run, boards.Of(run)), who.Person.Value, Wire.Name(who.Role));
    }

    /// <summary>Joins this screen to the news of a meal's shopping list. Taps on it go by HTTP.</summary>
    public async Task<EnteredShopping> EnterShopping(Guid meal)
    {
        await CheckSessionAsync();
        if (!await shopping.LetsInAsync(Visitor, meal))
        {
            throw new HubException(ShoppingWords.NotLetIn);
        }

        await Groups.AddToGroupAsync(Context.ConnectionId, ShoppingFeature.GroupOf(meal));
        return new EnteredShopping(Clock());
    }

    public async Task<TapAnswer> Send(TapRequest tap)
    {
        await CheckSessionAsync();
        if (paces.Take(Visitor.Session, Deed.Change) > TimeSpan.Zero)
        {
            // The screen keeps it, and sends it again later.
            throw new HubException("That was too much at once.");
        }

        return await taps.SendAsync(new RunId(tap.RunId), Visitor, tap);
    }

    /// <summary>What this screen can do now; everybody is shown who hears calls.</summary>
    public void Say(ScreenState state) => open.Say(state, Context);

    /// <summary>The clock of the run this screen has entered, for screens whose own is wrong.</summary>
    public long Clock() => (Context.Items.TryGetValue(Here, out var run) ? clocks.Now((RunId)run!) : time.GetUtcNow()).ToUnixTimeMilliseconds();

    async Task CheckSessionAsync()
    {
        if (!await sessions.IsOpenAsync(Visitor.Session, stop: Context.ConnectionAborted))
        {
            Context.Abort();
            throw new HubException("You are signed out. Join again, or sign in.");
        }
    }

    Visitor Visitor => Visitor.Of(Context.User!)!;
}
