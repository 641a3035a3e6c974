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
            if (StateOf(step.Id) is { Finished: { } end, Word.Rest: { } rest } && !Later(step).Any(later => StateOf(later.Id).Started is not null)
                && WantedAt(step, expected) is var until && (Later(step).Any() || until > now))
            {
                yield return new BoardResting(Meal.DishOf(step.Id), step.Id, end, until, rest);
            }
        }
    }

    /// <summary>When its dish goes on after it, or is served.</summary>
    internal DateTimeOffset WantedAt(Step step, Expectation expected) =>
        Later(step).Select(later => (DateTimeOffset?)expected.Starts(later.Id)).Min() ?? expected.Retimed.TableTimes[Meal.DishOf(step.Id).Course].Utc;

    /// <summary>Steps of the dish that wait for this one.</summary>
    IEnumerable<Step> Later(Step step) => Meal.DishOf(step.Id).Steps.Where(one => one.After.Any(after => after.Step == step.Id));
}
