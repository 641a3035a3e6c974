namespace CookAlong.Domain.Meals;

/// <summary>A short job done while a step runs: baste every 10 minutes, turn at half time. Exactly one of the two times is set.</summary>
/// <param name="Every">Repeated after this many minutes and its multiples, as long as it is done by the step's end. 1 or more.</param>
/// <param name="At">Once, this many minutes after the start; negative counts back from the end.</param>
/// <param name="Give">How far it may move either way, in minutes.</param>
public sealed record Tend(string Text, int Minutes, int? Every, int? At, int Give, bool ChildSafe)
{
    /// <summary>
    /// Nominal beginnings, in minutes after the step's start, for a step of <paramref name="length"/> minutes.
    /// None begins at the step's very end: what would be done then is part of taking it out.
    /// An <see cref="At"/> may lie outside a step that is too short for it; then only its <see cref="Give"/> can save it.
    /// </summary>
    public IEnumerable<int> Times(int length)
    {
        if (At is { } at)
        {
            yield return at >= 0 ? at : length + at;
            yield break;
        }

        for (var time = Every!.Value; time + Minutes <= length && time < length; time += Every.Value)
        {
            yield return time;
        }
    }
}
