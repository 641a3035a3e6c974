using System.Collections.Concurrent;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>Open sockets and whose they are, so that ending a session closes them. Hub groups would not keep anybody out.</summary>
public sealed class Connections
{
    readonly ConcurrentDictionary<string, (Visitor Visitor, HubCallerContext Context)> open = new();

    public Connections(Sessions sessions) => sessions.Ended += Close;

    public void Add(Visitor visitor, HubCallerContext context) => open[context.ConnectionId] = (visitor, context);

    public void Remove(HubCallerContext context) => open.TryRemove(context.ConnectionId, out _);

    /// <summary>Connections of a guest of this run.</summary>
    public IReadOnlyList<string> Of(PersonId person, RunId run) =>
        [.. open.Where(one => one.Value.Visitor.Person == person && one.Value.Visitor.Run == run).Select(one => one.Key)];

    void Close(Guid session)
    {
        foreach (var (_, context) in open.Values.Where(one => one.Visitor.Session == session))
        {
            context.Abort();
        }
    }
}
