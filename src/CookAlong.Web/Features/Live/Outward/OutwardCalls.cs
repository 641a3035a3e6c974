using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>
/// Which calls go beyond the page. A browser that asked for them gets its person's calls at their time while no page of theirs
/// is open; a call that nobody has answered for long goes every way there is.
/// </summary>
public sealed class OutwardCalls(WaysOut ways, PushSubscriptions subscriptions, Deliveries deliveries, OpenScreens open, RunClocks clocks)
{
    // Spares the database: what is written down once need not be every second.
    readonly HashSet<(RunId, CallId, string)> noted = [];

    public async Task LookAsync(Run run, Board board, CancellationToken stop)
    {
        var due = board.Calls.Where(call => Escalation.ReachOf(call, board.At) is not null).ToList();
        // Nobody beyond the page is called for food that is not there.
        if (due.Count == 0 || clocks.IsRehearsal(run.Id))
        {
            return;
        }

        var browsers = await subscriptions.OfAsync(run.Id, stop);
        var screens = open.Of(run.Id);
        foreach (var call in due)
        {
            var isBeyond = Escalation.ReachOf(call, board.At) == CallReach.Beyond;
            var to = browsers
                .Where(browser => isBeyond ? MayJoinIn(run, call, browser) : Concerns(run, call, browser) && screens.All.All(screen => screen.Person.Value != browser.Person))
                .Select(browser => PushSubscriptions.WayOf(browser.Id));
            var news = (isBeyond ? to.Concat(ways.OfHouse.Select(way => way.Id)) : to).Where(way => !noted.Contains((run.Id, call.Id, way))).ToList();
            await deliveries.NoteAsync(run, board, call, news, stop);
            noted.UnionWith(news.Select(way => (run.Id, call.Id, way)));
        }
    }

    static bool Concerns(Run run, Call call, PushSubscriptionRow browser) =>
        run.People.GetValueOrDefault(new PersonId(browser.Person)) is { } person
        && (call.Step is { } step ? person.Helper is { } helper && run.HoldersOf(step).Contains(helper) : person.Role == Role.Host);

    /// <summary>A child's phone is called for what is the child's, and for nothing else.</summary>
    static bool MayJoinIn(Run run, Call call, PushSubscriptionRow browser) =>
        run.People.GetValueOrDefault(new PersonId(browser.Person)) is { } person
        && (run.HelperOf(person)?.IsChild != true || Concerns(run, call, browser));
}
