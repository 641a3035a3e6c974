namespace CookAlong.Domain.Planning.Order;

/// <summary>Fitting a job into the spans it may lie in. Where it fits into none, it stays where it is: late, but told.</summary>
static class Spans
{
    /// <summary>
    /// How long somebody stays on for a job that runs late, in minutes, rather than leave it until they are next here
    /// (common practice, no source). A plan may not count on it; a kitchen behind its plan does it.
    /// </summary>
    public const int Overtime = 60;

    /// <summary>The earliest start from <paramref name="start"/> on; overtime is for jobs that would wait longer than it lasts.</summary>
    public static double Earliest((int From, int To)[]? spans, double start, double length)
    {
        if (spans is null)
        {
            return start;
        }

        double? stayingOn = null;
        foreach (var (from, to) in spans)
        {
            var at = Math.Max(from, start);
            if (at + length <= to)
            {
                return at - start > Overtime && stayingOn is { } late ? late : at;
            }

            if (at + length <= to + Overtime)
            {
                stayingOn ??= at;
            }
        }

        return stayingOn ?? start;
    }

    /// <summary>
    /// The latest start up to <paramref name="latest"/> that a job may slip to from <paramref name="start"/> with somebody there all the
    /// while: to the end of the span it lies in, for nobody goes home in the middle of it to come back later.
    /// </summary>
    public static int Latest((int From, int To)[]? spans, int start, int length, int latest)
    {
        foreach (var (from, to) in spans ?? [])
        {
            if (from <= start && start + length <= to)
            {
                return Math.Min(latest, to - length);
            }
        }

        return latest;
    }
}
