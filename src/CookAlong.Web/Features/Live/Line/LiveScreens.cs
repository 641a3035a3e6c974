using System.Collections.Concurrent;
using System.Collections.Immutable;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>Tells the screens of a run that there is something new.</summary>
public sealed class LiveScreens(IHubContext<LiveHub> hub, ReplanOffers offers, OpenScreens open, Boards boards, HeardElsewhere elsewhere, ILogger<LiveScreens> log)
{
    public const string Changed = "Changed";

    readonly ConcurrentDictionary<RunId, ChangedNews> told = new();

    public static string GroupOf(RunId run) => $"run {run}";

    /// <summary>The run as it is now, with its schedule of calls.</summary>
    public void Tell(Run run, ImmutableArray<RunEvent> happened)
    {
        var board = boards.Of(run);
        Send(run.Id, Changed, News(run, board));
        if (run.Wish is { IsEarly: false } wish && wish.Since == run.Sequence)
        {
            // Somebody has just upset the plan and waits for a new one: not at the clock's next beat, but now.
            LookForPlan(run, board);
        }

        foreach (var silenced in happened.OfType<RunEvent.CallAcknowledged>())
        {
            Send(run.Id, "Silence", new CallNews(silenced.Call.Value));
        }
    }

    /// <summary>Another server has written to the run. Where Redis carried its word, these screens know already.</summary>
    public void TellOfOthers(Run run)
    {
        if (elsewhere.HasTold(run))
        {
            News(run, boards.Of(run));
        }
        else
        {
            Tell(run, []);
        }
    }

    /// <summary>Asks for a new plan where there is a reason to, and says so as soon as there is one.</summary>
    public void LookForPlan(Run run, Board board) => offers.Look(run, board, () => TellIfMoved(run, boards.Of(run)));

    /// <summary>Time moves calls too: what waits for a step that runs over is called later than screens were told.</summary>
    public void TellIfMoved(Run run, Board board)
    {
        var before = told.GetValueOrDefault(run.Id);
        var news = News(run, board);
        if (before is null || before.Offer != news.Offer || before.Screens != news.Screens || before.Unanswered != news.Unanswered || !before.Calls.SequenceEqual(news.Calls))
        {
            Send(run.Id, Changed, news);
        }
    }

    public void Forget(RunId run)
    {
        told.TryRemove(run, out _);
        elsewhere.Forget(run);
    }

    public void Ring(RunId run, CallId call) => Send(run, "Ring", new CallNews(call.Value));

    ChangedNews News(Run run, Board board)
    {
        var news = new ChangedNews(run.Sequence, Wire.Calls(run, board), offers.Of(run)?.Id, open.Of(run.Id).Mark, Wire.Unanswered(board));
        told[run.Id] = news;
        return news;
    }

    // Not awaited: a phone that lies in a dead corner with a full buffer must not make the others wait.
    void Send<T>(RunId run, string what, T news) =>
        hub.Clients.Group(GroupOf(run)).SendAsync(what, news).ContinueWith(
            sent => log.LogWarning(sent.Exception, "Screens of run {Run} could not be told.", run),
            CancellationToken.None,
            TaskContinuationOptions.OnlyOnFaulted,
            TaskScheduler.Default);
}
