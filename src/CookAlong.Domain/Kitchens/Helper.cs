using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Kitchens;

/// <summary>A pair of hands; the host cook is one too.</summary>
/// <param name="Available">When they are here, in order and apart; empty = always.</param>
/// <param name="Can">Skills (knife, hot, carve, ...); null = all.</param>
public sealed record Helper(HelperId Id, string Name, ImmutableArray<Window> Available, ImmutableHashSet<string>? Can, bool IsChild)
{
    public bool IsHere(Minute start, Minute end) => Available.IsEmpty || Available.Any(window => window.Holds(start, end));

    /// <summary>Minutes of the span they are in the kitchen.</summary>
    public int MinutesHere(Minute from, Minute to) => Available.IsEmpty
        ? Math.Max(0, to - from)
        : Available.Sum(window => Math.Max(0, Minute.Earlier(window.To, to) - Minute.Later(window.From, from)));

    public bool HasSkills(IEnumerable<string> needs) => Can is null || needs.All(Can.Contains);

    /// <summary>May be given this hands-on step, whatever the hour.</summary>
    public bool MayDo(Step step) => HasSkills(step.Needs) && (!IsChild || step.ChildSafe);

    /// <summary>May be given this tend, whatever the hour. The skills of the step apply.</summary>
    public bool MayDo(Step step, Tend tend) => HasSkills(step.Needs) && (!IsChild || tend.ChildSafe);
}
