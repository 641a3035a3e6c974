namespace CookAlong.Domain.Planning;

/// <summary>
/// How few changes of its temperature an oven gets by with, its times settled. A change lies between every two things that
/// cannot share a temperature; one change may serve many. Things between two changes share a temperature two by two, and
/// ranges that do so have one for all of them: so the fewest changes are the fewest minutes that lie in every such gap.
/// </summary>
public static class DialChanges
{
    /// <summary>The latest minutes by which the changes must have happened, in order.</summary>
    public static List<int> Of(IEnumerable<(int Start, int End, CelsiusRange Celsius)> stays)
    {
        var ordered = stays.OrderBy(stay => stay.Start).ToList();
        var changes = new List<int>();
        foreach (var stay in ordered)
        {
            var since = changes.Count == 0 ? int.MinValue : changes[^1];
            if (ordered.Any(other => other.End <= stay.Start && other.End > since && !other.Celsius.Meets(stay.Celsius)))
            {
                changes.Add(stay.Start);
            }
        }

        return changes;
    }
}
