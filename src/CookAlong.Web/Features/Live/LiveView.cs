using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Wording;

namespace CookAlong.Web.Features.Live;

/// <summary>What a live page shows: a run's board, and who is looking at it.</summary>
/// <param name="Meal">For the names of things and the kitchen's time zone.</param>
/// <param name="Screens">Who else looks, and who hears calls.</param>
/// <param name="Me">The helper whose screen this is; null for a host who does not cook and for a watcher.</param>
public sealed record LiveView(RunId Run, Meal Meal, Board Board, PersonId Person, Role Role, HelperId? Me, OfferedPlan? Offer, ScreensHere Screens)
{
    public Words Words { get; } = new(Meal, Board.People, Board.At);

    public WallClock Clock { get; } = new(Meal.TimeZone, Board.At);

    /// <summary>Something has happened that the plan does not know of: the kitchen needs a new one.</summary>
    public bool IsPlanWished { get; init; }

    /// <summary>The household's own speakers could not be reached when they were last tried.</summary>
    public bool AreSpeakersAway { get; init; }

    /// <summary>How fast a rehearsal's clock runs, 1 to 120; null when the meal is cooked.</summary>
    public int? Rate { get; init; }

    public bool IsHost => Role == Role.Host;

    public bool MayTap => Role != Role.Watcher && !Board.IsOver;

    /// <summary>Until when a due job is its holder's; null where it stays theirs whatever the time.</summary>
    public Minute? HeldUntil(BoardCard card) => card.IsClaimed || card.Helpers.Any(IsSilent) ? card.HeldUntil : null;

    bool IsSilent(HelperId helper) => PersonOf(helper).Person is { } person && Screens.SilentSince(person, Board.At) is not null;

    public BoardPerson? MyPerson => Me is { } me ? PersonOf(me) : null;

    public BoardPerson PersonOf(HelperId helper) => Board.People.Single(one => one.Helper == helper);

    /// <summary>Jobs that want a person now. What merely cooks is seen in the oven, on its ring or among what looks after itself.</summary>
    public IEnumerable<BoardCard> Jobs => Board.Now.Where(card =>
        card.Call is not null || card.Tend is not null || card.Attention == Attention.HandsOn || card.State is CardState.Due or CardState.Over);

    /// <summary>Calls that are due and belong to no card: an oven's dial, table time. A pause has its banner.</summary>
    public IEnumerable<Call> LooseCalls => Board.Calls.Where(call =>
        call.Due <= Board.At && !call.IsAcknowledged && !(call.Kind == CallKind.Pause && Board.Pause is not null) && !Board.Now.Any(card => card.Call?.Id == call.Id));

    /// <summary>Jobs and loose calls together, the urgent first: they are what a full board still shows.</summary>
    public IEnumerable<NowCard> Now =>
        LooseCalls.Select(call => new NowCard(null, call)).Concat(Jobs.Select(card => new NowCard(card, null)))
            .OrderByDescending(one => (one.Call ?? one.Card!.Call)?.Priority == CallPriority.High);

    /// <summary>Running steps that need nobody and stand in no oven, on no ring and under no grill.</summary>
    public IEnumerable<BoardCard> ByThemselves => Board.Now.Except(Jobs).Where(card =>
        card.Place is { Oven: null, Rings: 0, Grill: null });

    /// <summary>What comes next, jobs and turns of a dial and table times together, in order of time.</summary>
    public IEnumerable<NextLine> Next =>
        Board.Next.Select(card => new NextLine(card.Starts, card, null))
            .Concat(Board.Calls.Where(call => call.Due > Board.At && call.Kind is CallKind.Dial or CallKind.Table).Select(call => new NextLine(call.Due, null, call)))
            .OrderBy(line => line.At);

    /// <summary>Steps nobody has finished.</summary>
    public int LeftOpen => Meal.Steps.Count() - Board.Done.Length;

    /// <summary>Nothing is left that could make the table late; only the meal has not been ended.</summary>
    public bool IsAllDone => !Board.IsOver && LeftOpen == 0;

    /// <summary>And no table is still to come.</summary>
    public bool IsAllServed => IsAllDone && !Next.Any();

    /// <summary>What cooks, or stands hot, in an oven, on a ring or under a grill, whether or not the run is over.</summary>
    public IEnumerable<BoardCard> OnTheHeat =>
        Board.Ovens.SelectMany(oven => oven.Shelves).Select(tray => tray?.Card)
            .Concat(Board.Rings.Concat(Board.Grills).Select(place => place.Card))
            .OfType<BoardCard>()
            .Where(card => card.State is CardState.Running or CardState.Over)
            .DistinctBy(card => card.Step.Id);

    public bool IsCooked(BoardCourse course) => Meal.Dishes.Where(dish => dish.Course == course.Course)
        .SelectMany(dish => dish.Steps)
        .All(step => Board.Done.Any(card => card.Step.Id == step.Id));

    /// <summary>Dishes with something still to do.</summary>
    public IEnumerable<Dish> Unserved => Meal.Dishes.Where(dish => dish.Steps.Any(step => Board.Done.All(card => card.Step.Id != step.Id)));

    /// <summary>Of a page, where the browser shows it.</summary>
    public string Title(string page) => Rate is null ? page : $"{Words.Rehearsal}: {page}";

    public string Path(string part) => $"/cook/{Run}/{part}";
}

/// <summary>What wants somebody now; exactly one of the two is set, the call when it is about no job of its own.</summary>
public sealed record NowCard(BoardCard? Card, Call? Call);

/// <summary>One line of the rail; exactly one of the two is set.</summary>
public sealed record NextLine(DateTimeOffset At, BoardCard? Card, Call? Call);

/// <summary>The re-planner's answer to a slip, until somebody takes it or the run moves on.</summary>
/// <param name="LateMinutes">How late the latest course would be with it.</param>
public sealed record OfferedPlan(Guid Id, int LateMinutes, ImmutableArray<StepChange> Changes);
