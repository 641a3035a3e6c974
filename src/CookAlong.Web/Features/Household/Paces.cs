using System.Collections.Concurrent;

namespace CookAlong.Web.Features.Household;

/// <summary>What a signed-in browser does, by what it costs the server.</summary>
public enum Deed
{
    /// <summary>A page or a part of one: 6,000 at once, then 60 a second.</summary>
    Look,

    /// <summary>A tap or a form: 3,000 at once, then 30 a second.</summary>
    Change,

    /// <summary>A plan, an upload, a page fetched, paper, a whole log: 60 at once, then one every 5 s.</summary>
    Heavy,

    /// <summary>Anything that happens on an open planning page: 1,200 at once, then 50 a second.</summary>
    OnPage,
}

/// <summary>
/// How fast one session may go: so much at once, and so much a second from then on (OWASP ASVS 5.0.0, 2.4.1). Ten people in a kitchen
/// have a session each and do not come near it; a script gone wild does. Kept in memory, by each server for itself.
/// </summary>
public sealed class Paces(TimeProvider time)
{
    const int MostKeys = 10_000;

    /// <summary>After so long every pace is at its fullest again.</summary>
    static readonly TimeSpan Forgotten = TimeSpan.FromMinutes(10);

    readonly ConcurrentDictionary<(Guid Session, Deed Deed), Pace> paces = new();

    /// <returns>Zero = go on; otherwise nothing was taken, and after so long there is room for one.</returns>
    public TimeSpan Take(Guid session, Deed deed)
    {
        var now = time.GetUtcNow();
        if (paces.Count > MostKeys)
        {
            foreach (var (key, old) in paces.Where(one => now - one.Value.At > Forgotten))
            {
                paces.TryRemove(key, out _);
            }
        }

        var (most, aSecond) = Of(deed);
        var pace = paces.GetOrAdd((session, deed), _ => new Pace { Left = most, At = now });
        lock (pace)
        {
            // A clock that is set back gives nothing and takes nothing.
            pace.Left = Math.Min(most, pace.Left + (Math.Max(0, (now - pace.At).TotalSeconds) * aSecond));
            pace.At = now;
            if (pace.Left < 1)
            {
                return TimeSpan.FromSeconds((1 - pace.Left) / aSecond);
            }

            pace.Left--;
            return TimeSpan.Zero;
        }
    }

    static (double Most, double ASecond) Of(Deed deed) => deed switch
    {
        Deed.Look => (6_000, 60),
        Deed.Change => (3_000, 30),
        Deed.Heavy => (60, 0.2),
        Deed.OnPage => (1_200, 50),
        _ => throw new System.Diagnostics.UnreachableException($"no pace for {deed}"),
    };

    sealed class Pace
    {
        public required double Left { get; set; }

        public required DateTimeOffset At { get; set; }
    }
}
