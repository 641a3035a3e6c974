using System.Collections.Concurrent;

namespace CookAlong.Web.Features.Household;

/// <summary>
/// Slows down guessing: after five wrong tries for one key (an account, an address) each further one closes the door for twice as long,
/// up to a quarter of an hour. A right one opens it. Kept in memory: a restart forgives, and guessing a password never becomes feasible by it.
/// </summary>
public sealed class WrongTries(TimeProvider time)
{
    const int Free = 5;
    const int MostKeys = 10_000;
    static readonly TimeSpan Longest = TimeSpan.FromMinutes(15);
    static readonly TimeSpan Forgotten = TimeSpan.FromHours(1);

    readonly ConcurrentDictionary<string, Tries> tries = new(StringComparer.Ordinal);

    /// <summary>How long the door stays closed for the worst of these keys; zero = open.</summary>
    public TimeSpan Wait(params ReadOnlySpan<string> keys)
    {
        var now = time.GetUtcNow();
        var longest = TimeSpan.Zero;
        foreach (var key in keys)
        {
            if (tries.TryGetValue(key, out var known) && known.ClosedUntil - now > longest)
            {
                longest = known.ClosedUntil - now;
            }
        }

        return longest;
    }

    public void Wrong(params ReadOnlySpan<string> keys)
    {
        var now = time.GetUtcNow();
        foreach (var key in keys)
        {
            tries.AddOrUpdate(key, _ => new Tries(1, now, now), (_, known) => known.Again(now));
        }

        if (tries.Count > MostKeys)
        {
            foreach (var (key, known) in tries.Where(one => now - one.Value.Last > Forgotten))
            {
                tries.TryRemove(key, out _);
            }
        }
    }

    public void Right(params ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            tries.TryRemove(key, out _);
        }
    }

    readonly record struct Tries(int Count, DateTimeOffset Last, DateTimeOffset ClosedUntil)
    {
        public Tries Again(DateTimeOffset now)
        {
            var count = now - Last > Forgotten ? 1 : Count + 1;
            var over = Math.Min(count - Free, 12);
            var closed = over <= 0 ? TimeSpan.Zero : TimeSpan.FromSeconds(1 << over);
            return new Tries(count, now, now + (closed < Longest ? closed : Longest));
        }
    }
}
