using System.Collections.Immutable;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Doneness.Forecasts;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

// A joint after it has come out: how far it still rises, and how long it stays hot.
public sealed partial record Run
{
    /// <summary>Whose limits this kitchen goes by; null in runs that began before one was asked.</summary>
    public Region? Authority { get; private init; }

    /// <summary>Minutes before a resting joint is too cold at which somebody is told.</summary>
    public const int RestNotice = 10;

    /// <summary>°C of the kitchen, where somebody said so.</summary>
    public int RoomCelsius { get; private init; } = Roasting.UsualRoom;

    Decision Cover(Step step, RunCommand.CoverRest wish, RunPerson who, DateTimeOffset now)
    {
        var state = StateOf(step.Id);
        if (step.Core is null)
        {
            return new Refusal.NoCore(step.Id);
        }

        if (IntoTheHeat(step) is null)
        {
            return new Refusal.NotStarted(step.Id);
        }

        if (ObjectionTo(step, who) is { } objection)
        {
            return objection;
        }

        if (wish.RoomCelsius is < Rest.LeastRoom or > Rest.MostRoom)
        {
            return new Refusal.OutOfRange("The kitchen, in °C,", Rest.LeastRoom, Rest.MostRoom);
        }

        if ((state.Covers is [.., var last] ? last.Under : RestUnder.Foil, RoomCelsius) == (wish.Under, wish.RoomCelsius))
        {
            return Decision.Nothing;
        }

        return new RunEvent.RestCovered(step.Id, wish.Under, wish.RoomCelsius, RestUnderOther(step, CoversWith(state, wish.Under, now), wish.RoomCelsius));
    }

    /// <summary>Before it is out it can only be meant from then on; later, what lay over it until now has had its effect.</summary>
    static ImmutableArray<RestCover> CoversWith(StepState state, RestUnder under, DateTimeOffset now) =>
        state.Finished is { } end ? [.. state.Covers.IsEmpty ? [new RestCover(end, RestUnder.Foil)] : state.Covers, new RestCover(now, under)] : [new RestCover(now, under)];

    Run WithCover(RunEvent.RestCovered covered, DateTimeOffset now) =>
        (this with { RoomCelsius = covered.RoomCelsius }).WithStep(covered.Step, state => state with
        {
            Covers = CoversWith(state, covered.Under, now),
            CoversBefore = state.CoversBefore.Add(new CoverBefore(state.Covers, RoomCelsius, covered.RoomCelsius)),
            Readings = Saying(state.Readings, covered.Rest),
        });

    static ImmutableArray<CoreReading> Saying(ImmutableArray<CoreReading> readings, RestWord? rest) =>
        rest is not null && readings is [.. var before, var last] ? [.. before, last with { Word = last.Word with { Rest = rest } }] : readings;

    /// <summary>How warm the kitchen is stays as it is where it has been said of another joint since.</summary>
    Decision TakeBackCover(Step step, RunPerson who)
    {
        var state = StateOf(step.Id);
        if (state.CoversBefore is not [.., var before])
        {
            return new Refusal.NothingToTakeBack();
        }

        if (ObjectionTo(step, who) is { } objection)
        {
            return objection;
        }

        var room = RoomCelsius == before.SaidCelsius ? before.RoomCelsius : RoomCelsius;
        return new RunEvent.CoverTakenBack(step.Id, room, RestUnderOther(step, before.Covers, room));
    }

    Run WithCoverTakenBack(RunEvent.CoverTakenBack back) =>
        (this with { RoomCelsius = back.RoomCelsius }).WithStep(back.Step, state => state with
        {
            Covers = state.CoversBefore[^1].Covers,
            CoversBefore = state.CoversBefore[..^1],
            Readings = Saying(state.Readings, back.Rest),
        });

    /// <summary>What it would do by the same readings; null where they say nothing of its rest.</summary>
    RestWord? RestUnderOther(Step step, ImmutableArray<RestCover> covers, int room)
    {
        var state = StateOf(step.Id);
        return state.Word is { Rest: not null } known && (this with { RoomCelsius = room }) is var run && run.RoastingOf(step) is { } roasting
            ? run.RestOf(roasting, [.. state.Readings.Select(Probe)], known, covers, state.Finished)
            : null;
    }

    /// <param name="outAt">When it came out; null = it is still in.</param>
    RestWord? RestOf(Roasting roasting, IReadOnlyList<ProbeReading> readings, CoreWord word, ImmutableArray<RestCover> covers, DateTimeOffset? outAt)
    {
        var last = readings[^1].At;
        if ((outAt ?? (word.Verdict == CoreVerdict.Reached ? last : word.Verdict == CoreVerdict.Expected ? word.Likely : null)) is not { } comesOut
            || Authority is not { } region || Holding.Hot(region) is not Published<Limit>.Is { Limit: var hot })
        {
            return null;
        }

        ImmutableArray<RestCover> over = covers.IsEmpty ? [new(comesOut, RestUnder.Foil)] : covers;
        if (Rest.Forecast(roasting, readings, comesOut, over, hot.Celsius) is not RestForecast.Expected rest)
        {
            return null;
        }

        var killed = CutFood.Of(roasting.Joint.Cut) is { } food && KillTables.Of(region, food) is Published<ImmutableArray<KillTable>>.Is { Limit: var tables }
            ? Lethality.Of([.. Believed(roasting, readings), .. rest.CoolestMiddle.Where(one => one.At > last)], tables)
            : null;
        return new RestWord(rest.Peak, rest.PeakAfter.Likely, rest.MiddleHot, hot.Celsius, killed?.DoneAt) { Under = over[^1].Under, RoomCelsius = (int)roasting.RoomCelsius };
    }

    static IEnumerable<(DateTimeOffset At, double Celsius)> Believed(Roasting roasting, IReadOnlyList<ProbeReading> readings) =>
        Understood.Of(roasting, readings) is { Problem: null, Known: var known } ? known.Good.Select(one => (one.At, one.Celsius)) : [];

    /// <summary>Joints that are out of the heat and that nobody has gone on with.</summary>
    internal IEnumerable<BoardResting> Resting(Expectation expected, DateTimeOffset now)
    {
        foreach (var step in Meal.Steps.Where(step => step.Core is not null))
        {
            if (StateOf(step.Id) is { Finished: { } end, Word.Rest: { } rest } && WantedAt(step, expected) is var until
                && (GoesOnWith(step) is { } next ? StateOf(next.Id).Started is null : until > now))
            {
                yield return new BoardResting(Meal.DishOf(step.Id), step.Id, end, until, rest);
            }
        }
    }

    /// <summary>When its dish goes on after its rest, or is served.</summary>
    internal DateTimeOffset WantedAt(Step step, Expectation expected) =>
        GoesOnWith(step) is { } next ? expected.Starts(next.Id) : expected.Retimed.TableTimes[Meal.DishOf(step.Id).Course].Utc;

    Step? GoesOnWith(Step step) => PlannedRest.EndsWith(Meal.DishOf(step.Id), step, Plan);

    /// <summary>Dishes that have nearly been out of cold and heat for as long as they may, and are not on the table yet.</summary>
    internal IEnumerable<BoardStanding> Standing(Expectation expected, DateTimeOffset now) =>
        OutAtMost is not { } limit ? []
        : from dish in Meal.Dishes
          where expected.Retimed.TableTimes[dish.Course].Utc > now
          let standing = StandingOf(dish, now)
          where standing is not null && standing.Known >= limit.Most - StandingNotice
          select new BoardStanding(dish, standing.Known, limit);

    /// <summary>Null where the household's authority has none.</summary>
    internal TimeLimit? OutAtMost => Authority is { } region && Holding.Out(region, RoomCelsius) is Published<TimeLimit>.Is { Limit: var limit } ? limit : null;

    internal StandingOut? StandingOf(Dish dish, DateTimeOffset until) =>
        StandingOut.Of(dish, id => (StateOf(id).Started, StateOf(id).Finished), WayOf, KeptHot(dish), until);

    /// <summary>So long before a dish has been out for as long as it may, it is named.</summary>
    static readonly TimeSpan StandingNotice = TimeSpan.FromMinutes(30);

    IEnumerable<StandingOut.Span> KeptHot(Dish dish)
    {
        foreach (var step in dish.Steps)
        {
            if (StateOf(step.Id) is { Finished: { } end, Word.Rest: { } rest })
            {
                yield return new(end, end + rest.Hot.Low);
            }
        }

        if (Plan.Holds.FirstOrDefault(hold => hold.Dish == dish.Id) is { Place: HoldPlace.WarmOven or HoldPlace.Fridge } && dish.Steps.Max(step => StateOf(step.Id).Finished) is { } done && dish.Steps.All(step => StateOf(step.Id).Finished is not null))
        {
            yield return new(done, DateTimeOffset.MaxValue);
        }
    }
}
