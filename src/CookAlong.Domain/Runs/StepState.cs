using System.Collections.Immutable;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>What the run knows of one step.</summary>
/// <param name="Started">When somebody said so; for a step that was only ever said to be finished, when it must have begun.</param>
/// <param name="By">Who started it last, or finished it.</param>
/// <param name="ExtraMinutes">Added by hand to its planned length.</param>
/// <param name="Undone">How often it was taken back; what has rung about it rings anew.</param>
/// <param name="Holders">Who took it or was given it; empty = let go; null = as planned.</param>
public sealed record StepState(
    DateTimeOffset? Started,
    DateTimeOffset? Finished,
    PersonId? By,
    int ExtraMinutes,
    int Undone,
    ImmutableArray<HelperId>? Holders)
{
    /// <summary>How many minutes of its length by hand the plan that was taken since counts already; negative where that plan made it shorter.</summary>
    public int CountedByPlan { get; init; }

    /// <summary>Minutes by which its thermometer moves its end; negative where it is done sooner.</summary>
    public int ByCore { get; init; }

    /// <summary><see cref="ByCore"/> when readings last made plans on offer out of date.</summary>
    public int ByCoreTold { get; init; }

    /// <summary>Core readings in their order.</summary>
    public ImmutableArray<CoreReading> Readings { get; init; } = [];

    /// <summary>What the host looked at instead; null = nothing.</summary>
    public string? Vouched { get; init; }

    /// <summary>When foil was over it while it roasts; the last one may still be.</summary>
    public ImmutableArray<FoilSpan> Foil { get; init; } = [];

    public bool IsUnderFoil => Foil is [.., { To: null }];

    /// <summary>What was said to lie over it while it rests, in order of time; empty = nobody said, and foil is taken for granted.</summary>
    public ImmutableArray<RestCover> Covers { get; init; } = [];

    /// <summary>What was said before each of <see cref="Covers"/>' changes, the last one last.</summary>
    public ImmutableArray<CoverBefore> CoversBefore { get; init; } = [];

    /// <summary>The word on the last reading.</summary>
    public CoreWord? Word => Readings.LastOrDefault()?.Word;

    /// <summary>When it is done by each reading that names a new time: one after it is there names none.</summary>
    public IEnumerable<DateTimeOffset> EndsNamed
    {
        get
        {
            var isDone = false;
            foreach (var reading in Readings)
            {
                if (reading.Word is { Verdict: CoreVerdict.Expected, Likely: { } likely })
                {
                    isDone = false;
                    yield return likely;
                }
                else if (reading.Word.Verdict == CoreVerdict.Reached && !isDone)
                {
                    isDone = true;
                    yield return reading.At;
                }
            }
        }
    }

    /// <summary>Minutes of its length that the plan does not know of.</summary>
    public int BeyondPlan => ExtraMinutes + ByCore - CountedByPlan;

    /// <summary>When its holders last took it or were given it; null = they have it by the plan alone.</summary>
    public DateTimeOffset? HeldSince { get; init; }

    /// <summary>Each time it was given or handed to somebody, the last one last.</summary>
    public ImmutableArray<Giving> Givings { get; init; } = [];

    /// <summary>Who has it said that they are on it; it is theirs until then at the least.</summary>
    public Minute? KeptUntil { get; init; }

    public static StepState Untouched { get; } = new(null, null, null, 0, 0, null);

    public bool IsRunning => Started is not null && Finished is null;
}

/// <summary>A step given or handed over.</summary>
/// <param name="From">Who handed it over; null = the host gave it.</param>
/// <param name="Before">Whose it was; null = as planned then.</param>
/// <param name="Since">When they had taken it or been given it; null = by the plan alone.</param>
/// <param name="After">Whose it is by that.</param>
public sealed record Giving(HelperId? From, ImmutableArray<HelperId>? Before, DateTimeOffset? Since, ImmutableArray<HelperId> After);

/// <summary>What was said to lie over a joint, and how warm the kitchen was said to be, until something else was.</summary>
/// <param name="SaidCelsius">How warm it was said to be then.</param>
public sealed record CoverBefore(ImmutableArray<RestCover> Covers, int RoomCelsius, int SaidCelsius);

/// <summary>Which tend of which step, which time.</summary>
public readonly record struct TendTurn(StepId Step, int Tend, int Turn);

/// <summary>Somebody who is in the run now.</summary>
/// <param name="Helper">Their pair of hands; null for a watcher, or a host who only watches over it.</param>
public sealed record RunPerson(PersonId Person, string Name, Role Role, HelperId? Helper);

/// <summary>A new plan as people hear of it: when it was taken, and what it changed for whom.</summary>
/// <param name="Changes">Against what people were told before, with the work they had taken or been given by then.</param>
public sealed record PlanTaken(DateTimeOffset At, ImmutableArray<StepChange> Changes)
{
    /// <summary>It is the plan before, since the last one was taken back.</summary>
    public bool IsBack { get; init; }
}

/// <param name="After">The pause point's step; null = the host held everything.</param>
/// <param name="Sequence">The event that began it.</param>
public sealed record RunPause(DateTimeOffset Since, StepId? After, long Sequence);
