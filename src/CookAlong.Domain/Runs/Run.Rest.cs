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

    RestWord? RestOf(Roasting roasting, IReadOnlyList<ProbeReading> readings, CoreWord word)
    {
        var last = readings[^1].At;
        if ((word.Verdict == CoreVerdict.Reached ? last : word.Verdict == CoreVerdict.Expected ? word.Likely : null) is not { } comesOut
            || Authority is not { } region || Holding.Hot(region) is not Published<Limit>.Is { Limit: var hot }
            || Rest.Forecast(roasting, readings, comesOut, RestUnder.Foil, hot.Celsius) is not RestForecast.Expected rest)
        {
            return null;
        }

        var killed = CutFood.Of(roasting.Joint.Cut) is { } food && KillTables.Of(region, food) is Published<ImmutableArray<KillTable>>.Is { Limit: var tables }
            ? Lethality.Of([.. Believed(roasting, readings), .. rest.CoolestMiddle.Where(one => one.At > last)], tables)
            : null;
        return new RestWord(rest.Peak, rest.PeakAfter.Likely, rest.MiddleHot, hot.Celsius, killed?.DoneAt);
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
    internal IEnumerable<BoardStanding> Standing(Expectation expected, DateTimeOffset now)
    {
        if (Authority is not { } region || Holding.Out(region, Roasting.UsualRoom) is not Published<TimeLimit>.Is { Limit: var limit })
        {
            yield break;
        }

        foreach (var dish in Meal.Dishes.Where(dish => expected.Retimed.TableTimes[dish.Course].Utc > now))
        {
            var standing = StandingOut.Of(dish, id => (StateOf(id).Started, StateOf(id).Finished), WayOf, KeptHot(dish), now);
            if (standing is { Known: var known } && known >= limit.Most - StandingNotice)
            {
                yield return new BoardStanding(dish, known, limit);
            }
        }
    }

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
