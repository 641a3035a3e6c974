namespace CookAlong.Planner;

/// <summary>Arithmetic on spans of the clock, in whole minutes, their ends not included unless said.</summary>
internal static class Spans
{
    /// <summary>In order, those that touch or overlap made one.</summary>
    public static List<(int From, int To)> Joined(IEnumerable<(int From, int To)> spans)
    {
        var joined = new List<(int From, int To)>();
        foreach (var span in spans.Where(span => span.From < span.To).Order())
        {
            if (joined.Count > 0 && span.From <= joined[^1].To)
            {
                joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, span.To));
            }
            else
            {
                joined.Add(span);
            }
        }

        return joined;
    }

    /// <summary>Where something of <paramref name="minutes"/> may start to lie wholly in one of the spans; both ends included.</summary>
    public static List<(int From, int To)> StartsOf(IEnumerable<(int From, int To)> spans, int minutes) =>
        [.. spans.Select(span => (span.From, To: span.To - minutes)).Where(span => span.From <= span.To)];

    /// <summary>Where at least <paramref name="count"/> of the lists of starts (both ends included) allow a start; both ends included.</summary>
    public static List<(int From, int To)> WhereAtLeast(int count, IReadOnlyList<List<(int From, int To)>> starts)
    {
        // Starts of one helper may overlap where windows touch: count each helper once.
        var own = starts.Select(list => Joined(list.Select(span => (span.From, span.To + 1)))).ToList();
        var cuts = own.SelectMany(list => list).SelectMany(span => new[] { span.From, span.To }).Distinct().Order().ToList();
        var found = cuts.Zip(cuts.Skip(1))
            .Where(cut => own.Count(list => list.Any(span => span.From <= cut.First && cut.Second <= span.To)) >= count);
        return [.. Joined(found).Select(span => (span.From, span.To - 1))];
    }

    /// <summary>What of <paramref name="within"/> the spans leave free.</summary>
    public static IEnumerable<(int From, int To)> Without(IEnumerable<(int From, int To)> spans, (int From, int To) within)
    {
        var from = within.From;
        foreach (var span in Joined(spans))
        {
            if (span.From > from)
            {
                yield return (from, Math.Min(span.From, within.To));
            }

            from = Math.Max(from, span.To);
            if (from >= within.To)
            {
                yield break;
            }
        }

        yield return (from, within.To);
    }
}
