using System.Collections.Concurrent;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>
/// Open sockets, whose they are and what each screen says of itself. Not kept: a screen says it again when it comes back.
/// Ending a session closes its sockets; hub groups would not keep anybody out.
/// </summary>
public sealed class OpenScreens
{
    readonly ConcurrentDictionary<string, Open> open = new();
    readonly ConcurrentDictionary<(RunId, PersonId), DateTimeOffset> left = new();
    readonly ConcurrentDictionary<Guid, Elsewhere> elsewhere = new();
    readonly TimeProvider time;
    readonly DateTimeOffset began;

    public OpenScreens(Sessions sessions, TimeProvider time)
    {
        this.time = time;
        began = time.GetUtcNow();
        sessions.Ended += Close;
    }

    public void Add(Visitor visitor, HubCallerContext context) => open[context.ConnectionId] = new Open(visitor, context, Run: null, ScreenState.Unknown);

    public void Enter(RunId run, HubCallerContext context) => Change(context, screen => screen with { Run = run });

    public void Say(ScreenState state, HubCallerContext context) => Change(context, screen => screen with { State = state });

    public void Remove(HubCallerContext context)
    {
        if (open.TryRemove(context.ConnectionId, out var gone) && gone.Run is { } run)
        {
            left[(run, gone.Visitor.Person)] = time.GetUtcNow();
        }
    }

    /// <summary>The screens that look at this run now.</summary>
    public ScreensHere Of(RunId run) => new(
        [
            .. open.Values.Where(one => one.Run == run).Select(one => new ScreenHere(one.Visitor.Person, one.State)),
            .. elsewhere.Values.SelectMany(server => server.Screens[run]),
        ],
        person => left.GetValueOrDefault((run, person), began));

    /// <summary>Those of this server, for the others.</summary>
    public ILookup<RunId, ScreenHere> Own => open.Values.Where(one => one.Run is not null).ToLookup(one => one.Run!.Value, one => new ScreenHere(one.Visitor.Person, one.State));

    /// <summary>What another server says of the screens that are open there; it counts until it says otherwise, or <see cref="DropSilent"/>.</summary>
    public void Hear(Guid server, ILookup<RunId, ScreenHere> screens)
    {
        var now = time.GetUtcNow();
        if (elsewhere.TryGetValue(server, out var before))
        {
            foreach (var run in before.Screens)
            {
                foreach (var gone in run.Select(screen => screen.Person).Except(screens[run.Key].Select(screen => screen.Person)))
                {
                    left[(run.Key, gone)] = now;
                }
            }
        }

        elsewhere[server] = new Elsewhere(screens, now);
    }

    /// <summary>Servers of which nothing has been heard for so long are gone, and their screens with them.</summary>
    public void DropSilent(TimeSpan after)
    {
        foreach (var (server, heard) in elsewhere.Where(one => time.GetUtcNow() - one.Value.At > after))
        {
            Hear(server, Enumerable.Empty<ScreenHere>().ToLookup(_ => default(RunId)));
            elsewhere.TryRemove(server, out _);
        }
    }

    /// <summary>Connections of a guest of this run.</summary>
    public IReadOnlyList<string> Of(PersonId person, RunId run) =>
        [.. open.Where(one => one.Value.Visitor.Person == person && one.Value.Visitor.Run == run).Select(one => one.Key)];

    void Change(HubCallerContext context, Func<Open, Open> change)
    {
        if (open.TryGetValue(context.ConnectionId, out var before))
        {
            open.TryUpdate(context.ConnectionId, change(before), before);
        }
    }

    /// <summary>Whose sockets are open here.</summary>
    public Guid[] Sessions => [.. open.Values.Select(one => one.Visitor.Session).Distinct()];

    public void Close(Guid session)
    {
        foreach (var screen in open.Values.Where(one => one.Visitor.Session == session))
        {
            screen.Context.Abort();
        }
    }

    sealed record Elsewhere(ILookup<RunId, ScreenHere> Screens, DateTimeOffset At);

    sealed record Open(Visitor Visitor, HubCallerContext Context, RunId? Run, ScreenState State);
}
