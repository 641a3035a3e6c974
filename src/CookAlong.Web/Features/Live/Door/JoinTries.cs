namespace CookAlong.Web.Features.Live.Door;

/// <summary>At most five wrong codes a minute from one address.</summary>
public sealed class JoinTries(TimeProvider time)
{
    const int Most = 5;
    static readonly TimeSpan Span = TimeSpan.FromMinutes(1);

    readonly Lock door = new();
    readonly Dictionary<string, List<DateTimeOffset>> wrong = new(StringComparer.Ordinal);

    public bool MayTry(string address)
    {
        lock (door)
        {
            Forget();
            return !wrong.TryGetValue(address, out var tries) || tries.Count < Most;
        }
    }

    public void Wrong(string address)
    {
        lock (door)
        {
            Forget();
            if (!wrong.TryGetValue(address, out var tries))
            {
                wrong[address] = tries = [];
            }

            tries.Add(time.GetUtcNow());
        }
    }

    void Forget()
    {
        var from = time.GetUtcNow() - Span;
        foreach (var (address, tries) in wrong)
        {
            tries.RemoveAll(at => at <= from);
            if (tries.Count == 0)
            {
                wrong.Remove(address);
            }
        }
    }
}
