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
        [.. open.Values.Where(one => one.Run == run).Select(one => new ScreenHere(one.Visitor.Person, one.State))],
        person => left.GetValueOrDefault((run, person), began));

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

    void Close(Guid session)
    {
        foreach (var screen in open.Values.Where(one => one.Visitor.Session == session))
        {
            screen.Context.Abort();
        }
    }

    sealed record Open(Visitor Visitor, HubCallerContext Context, RunId? Run, ScreenState State);
}
