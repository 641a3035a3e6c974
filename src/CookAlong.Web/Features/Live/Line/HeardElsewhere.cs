using System.Collections.Concurrent;
using System.Text.Json;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>Up to where the screens of a run have been told here what another server wrote, by that server itself.</summary>
public sealed class HeardElsewhere
{
    readonly ConcurrentDictionary<string, long> told = new();

    public bool HasTold(Run run) => told.GetValueOrDefault(LiveScreens.GroupOf(run.Id)) >= run.Sequence;

    /// <param name="news">As <see cref="ChangedNews"/> is on the wire, where something has changed.</param>
    public void Note(string group, string what, IReadOnlyList<JsonElement> news)
    {
        if (what == LiveScreens.Changed)
        {
            var sequence = news[0].GetProperty("sequence").GetInt64();
            told.AddOrUpdate(group, sequence, (_, before) => Math.Max(before, sequence));
        }
    }

    public void Forget(RunId run) => told.TryRemove(LiveScreens.GroupOf(run), out _);
}
