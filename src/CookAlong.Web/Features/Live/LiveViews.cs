using System.Security.Claims;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Live;

/// <summary>Makes what a live page shows.</summary>
public sealed class LiveViews(LiveRuns runs, IncomingTaps taps, ReplanOffers offers, OpenScreens open, WaysOut ways, Boards boards, RunClocks clocks)
{
    /// <summary>Null when there is no such run, or the visitor is not in it.</summary>
    public async Task<LiveView?> OfAsync(RunId id, ClaimsPrincipal user)
    {
        if (Visitor.Of(user) is not { } visitor || !visitor.MaySee(id) || await runs.FindAsync(id) is not { } live
            || await taps.AdmitAsync(live, visitor, user.FindFirstValue(ClaimTypes.Name)) is not { } who)
        {
            return null;
        }

        var run = live.Current;
        var offer = who.Role == Role.Host ? offers.Of(run) : null;
        return new LiveView(id, run.Meal, boards.Of(run), who.Person, who.Role, who.Helper, offer, ScreensOf(run))
        {
            IsPlanWished = run.Wish is { IsEarly: false },
            AreSpeakersAway = ways.NotReached.Any(),
            Rate = clocks.Of(id)?.Rate,
        };
    }

    /// <summary>In a rehearsal the people have no real phones, and those they have drop out now and then.</summary>
    ScreensHere ScreensOf(Run run) => clocks.IsRehearsal(run.Id)
        ? new ScreensHere(open.Of(run.Id).All, person => clocks.Now(run.Id) is var now && new SimulatedHands(run.Id).DroppedSince(person, now) is { } since ? since : now)
        : open.Of(run.Id);
}
