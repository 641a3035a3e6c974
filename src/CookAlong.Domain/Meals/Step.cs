using System.Collections.Immutable;

namespace CookAlong.Domain.Meals;

/// <summary>One piece of work or one wait in a dish.</summary>
/// <param name="Text">What to do, as a headline in plain words ("Rough up the boiled potatoes").</param>
/// <param name="How">One line of how; null when the headline says it all.</param>
/// <param name="Caution">What can hurt somebody here; null when nothing can.</param>
/// <param name="Way">The step as written.</param>
/// <param name="Options">Other ways of doing the same step; the planner chooses.</param>
/// <param name="Needs">Skills each of its helpers must have.</param>
/// <param name="After">What it waits for; already filled in with the step before it in its dish unless the file said otherwise.</param>
/// <param name="At">Fixed start.</param>
/// <param name="Window">The step lies wholly inside it.</param>
/// <param name="By">Helpers the host gave it to; empty lets the planner choose.</param>
/// <param name="Choice">The option the host chose (-1 = as written); null lets the planner choose.</param>
/// <param name="PauseAfter">Everyone waits when it is done, until the host says go on.</param>
public sealed record Step(
    StepId Id,
    string Text,
    string? How,
    string? Caution,
    Way Way,
    ImmutableArray<Way> Options,
    ImmutableArray<string> Needs,
    bool ChildSafe,
    ImmutableArray<After> After,
    ImmutableArray<Tend> Tends,
    Minute? At,
    Window? Window,
    ImmutableArray<HelperId> By,
    int? Choice,
    bool PauseAfter)
{
    /// <summary>Null for most: they are done when somebody says so.</summary>
    public CoreWanted? Core { get; init; }

    /// <summary>The way number <paramref name="option"/>; -1 = as written.</summary>
    public Way WayOf(int option) => option < 0 ? Way : Options[option];

    /// <summary>With this way in the place of number <paramref name="option"/>; -1 = as written.</summary>
    public Step WithWay(int option, Way way) => option < 0 ? this with { Way = way } : this with { Options = Options.SetItem(option, way) };

    /// <summary>Every way the planner may take, with its number.</summary>
    public IEnumerable<(int Option, Way Way)> Ways =>
        Choice is { } chosen
            ? [(chosen, WayOf(chosen))]
            : Enumerable.Range(-1, Options.Length + 1).Select(option => (option, WayOf(option)));
}

/// <summary>How a step is done: how long, how much of whom, with what.</summary>
/// <param name="People">Helpers a hands-on step takes, 1 or more; of no meaning for the other kinds.</param>
public sealed record Way(Durations Minutes, Attention Attention, int People, Uses Uses);

/// <summary>Whole minutes; 1 &lt;= least &lt;= likely &lt;= most. The plan uses <paramref name="Likely"/>.</summary>
public readonly record struct Durations(int Least, int Likely, int Most)
{
    public static Durations Exactly(int minutes) => new(minutes, minutes, minutes);
}

/// <summary>How much of a person a step takes.</summary>
public enum Attention
{
    /// <summary>Its helpers do nothing else.</summary>
    HandsOn,

    /// <summary>An adult is in the kitchen throughout, busy or not; adults may hand over.</summary>
    Nearby,

    Unattended,
}

/// <summary>A step's start waits for another's end.</summary>
/// <param name="Least">Minutes at the least between that step's end and this one's start.</param>
/// <param name="Most">Minutes at the most; null = no limit.</param>
public sealed record After(StepId Step, int Least, int? Most);

/// <summary>A span of the clock, its end not included.</summary>
public readonly record struct Window(Minute From, Minute To)
{
    public bool Holds(Minute start, Minute end) => From <= start && end <= To;
}
