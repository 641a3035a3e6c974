using CookAlong.Domain.Doneness;
using CookAlong.Domain.Doneness.Forecasts;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

// The thermometer's word on a step: readings, when it will be done by them, and that it is not done before.
public sealed partial record Run
{
    /// <summary>Nothing in a kitchen that anybody would type; °C.</summary>
    const int LeastReading = -60, MostReading = 600;

    /// <summary>How long the door stands open for a tend; common practice, no source.</summary>
    static readonly TimeSpan doorForTend = TimeSpan.FromMinutes(2);

    /// <summary>Minutes a reading may have waited to be sent; an older one says nothing of now.</summary>
    const int OldestReading = 120;

    /// <summary>Minutes by which readings may move an end before a plan on offer is out of date: a forecast trembles by less.</summary>
    const int Trembles = 3;

    /// <summary>Characters of what else was looked at.</summary>
    public const int LongestCheck = 200;

    /// <summary>A reading is a report: anybody who may finish the step may bring it, and it is heard in a pause too.</summary>
    Decision ReadCore(Step step, decimal celsius, DateTimeOffset? read, RunPerson who, DateTimeOffset now)
    {
        var state = StateOf(step.Id);
        var at = read is { } before && before <= now ? before : now;
        return step.Core is null ? new Refusal.NoCore(step.Id)
            : state.Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
            : IntoTheHeat(step) is null ? new Refusal.NotStarted(step.Id)
            : ObjectionTo(step, who) is { } objection ? objection
            : (now - at).TotalMinutes > OldestReading ? new Refusal.OutOfRange("Minutes since it was read", 0, OldestReading)
            : celsius is < LeastReading or > MostReading ? new Refusal.OutOfRange("°C", LeastReading, MostReading)
            : new RunEvent.CoreRead(step.Id, celsius, at, WordOn(step, [.. state.Readings.Select(Probe), new ProbeReading(at, (double)celsius)]));
    }

    /// <summary>The last one was not meant, or the probe was not where it should be.</summary>
    Decision TakeBackReading(Step step, RunPerson who)
    {
        var state = StateOf(step.Id);
        return state.Readings.IsEmpty ? new Refusal.NothingToTakeBack()
            : state.Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
            : ObjectionTo(step, who) is { } objection ? objection
            : new RunEvent.CoreTakenBack(step.Id);
    }

    /// <summary>The host vouches for it by another check than a reading.</summary>
    Decision VouchFor(Step step, string check) =>
        step.Core is null ? new Refusal.NoCore(step.Id)
        : StateOf(step.Id).Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
        : string.IsNullOrWhiteSpace(check) || check.Length > LongestCheck ? new Refusal.OutOfRange("What was looked at, in characters,", 1, LongestCheck)
        : new RunEvent.CoreVouched(step.Id, check.Trim());

    /// <summary>Why a step with a core temperature is not done yet; null when it is, or has none.</summary>
    Refusal? NotDoneInside(Step step)
    {
        if (step.Core is not { } core || StateOf(step.Id) is not { Vouched: null } state)
        {
            return null;
        }

        var there = state.Readings.Reverse().TakeWhile(reading => reading.Word.Verdict == CoreVerdict.Reached).ToList();
        return there.Count == 0 ? new Refusal.CoreNotReached(step.Id, core.Celsius, state.Readings.LastOrDefault(), state.Word?.Likely)
            : there[0].At - there[^1].At < TimeSpan.FromMinutes(core.Minutes) ? new Refusal.CoreNotLongEnough(step.Id, core.Celsius, core.Minutes, there[^1].At.AddMinutes(core.Minutes))
            : null;
    }

    /// <summary>Readings to come reckon with it; what was said before stands.</summary>
    Decision SetFoil(Step step, bool isOn, RunPerson who)
    {
        var state = StateOf(step.Id);
        return step.Core is null ? new Refusal.NoCore(step.Id)
            : state.Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
            : IntoTheHeat(step) is null ? new Refusal.NotStarted(step.Id)
            : ObjectionTo(step, who) is { } objection ? objection
            : isOn == state.IsUnderFoil ? Decision.Nothing
            : new RunEvent.FoilSet(step.Id, isOn);
    }

    Decision TakeBackFoil(Step step, RunPerson who)
    {
        var state = StateOf(step.Id);
        return state.Foil.IsEmpty ? new Refusal.NothingToTakeBack()
            : state.Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
            : ObjectionTo(step, who) is { } objection ? objection
            : new RunEvent.FoilTakenBack(step.Id);
    }

    CoreWord WordOn(Step step, IReadOnlyList<ProbeReading> readings)
    {
        var core = step.Core!;
        return RoastingOf(step) is { } roasting && CoreWord.Of(Thermometer.Forecast(roasting, readings, core.Celsius)) is { Verdict: not CoreVerdict.NoForecast } word
            ? word with { Rest = RestOf(roasting, readings, word, StateOf(step.Id).Covers, outAt: null) }
            : WithoutForecast(readings, core.Celsius);
    }

    /// <summary>Null of what is not in the heat, or no joint that is known.</summary>
    internal Roasting? RoastingOf(Step step)
    {
        if (step.Core?.Joint is not { } joint || IntoTheHeat(step) is not { } since || Plan.Step(step.Id).Oven is not { } oven)
        {
            return null;
        }

        // The dial waits for what is late: everything the programme does is as much later as the joint, and it stays in until it is done.
        var late = since - Roasts(step).Min(one => Plan.Step(one.Id).Start).Utc;
        var programme = Plan.Ovens.Single(one => one.Oven == oven);
        return Roasting.By(joint, since, programme, Meal.Kitchen.Ovens.Single(one => one.Id == oven).StartsAt).AsLeftAt(Plan.Step(step.Id).End.Utc).Later(late)
            with
        { Doors = [.. DoorsSince(step, since)], Foil = StateOf(step.Id).Foil, RoomCelsius = RoomCelsius };
    }

    /// <summary>Readings of one joint a few minutes apart are no farther apart; °C, own estimate.</summary>
    const int Agrees = 20;

    /// <summary>Where nobody can say when, the reading counts once the one before it agrees: a bone, or a slip of the finger, ends nothing.</summary>
    static CoreWord WithoutForecast(IReadOnlyList<ProbeReading> readings, int celsius) =>
        ReadingCheck.Impossible(readings[^1]) is { } impossible ? new CoreWord(CoreVerdict.Impossible, Celsius: impossible.IfFahrenheit)
        : readings[^1].Celsius < celsius ? new CoreWord(CoreVerdict.NoForecast)
        : readings.SkipLast(1).LastOrDefault(reading => ReadingCheck.Impossible(reading) is null) is { Celsius: var before } && before >= celsius - Agrees && readings.Count > 1 ? new CoreWord(CoreVerdict.Reached)
        : new CoreWord(CoreVerdict.OnceMore);

    /// <summary>The step with a core temperature that this one is, or as oven work of the same joint leads to; null = none.</summary>
    public Step? CoreStepOf(Step step) =>
        step.Core is not null ? step
        : WayOf(step).Uses.Oven is not null ? Meal.DishOf(step.Id).Steps.FirstOrDefault(other => other.Core is not null && Roasts(other).Contains(step))
        : null;

    /// <summary>A joint may roast in several steps: when the first of them began; null = not yet.</summary>
    DateTimeOffset? IntoTheHeat(Step step) => Roasts(step).Select(one => StateOf(one.Id).Started).Where(at => at is not null).DefaultIfEmpty(null).Min();

    IEnumerable<Step> Roasts(Step step) => Meal.DishOf(step.Id).OvenWorkTo(step, WayOf);

    IEnumerable<DoorOpening> DoorsSince(Step step, DateTimeOffset since)
    {
        var roasts = Roasts(step).Select(one => one.Id).ToHashSet();
        return TendsDone.Where(done => roasts.Contains(done.Key.Step) && done.Value >= since).Select(done => new DoorOpening(done.Value, doorForTend)).OrderBy(door => door.At);
    }

    /// <summary>The step ends when the thermometer says, not when the recipe does; a reading before the step itself begins moves nothing yet.</summary>
    Run WithReading(StepId step, CoreReading reading) => WithMinutesByCore(WithStep(step, state => state with { Readings = state.Readings.Add(reading) }), step);

    Run WithoutLastReading(StepId step) => WithMinutesByCore(WithStep(step, state => state with { Readings = state.Readings.RemoveAt(state.Readings.Length - 1) }), step);

    /// <summary>By the last reading that names a time; one that is in doubt changes nothing.</summary>
    static Run WithMinutesByCore(Run run, StepId step)
    {
        var state = run.StateOf(step);
        var ends = state.EndsNamed.ToList();
        var without = run.MinutesOf(step) - state.ByCore;
        var minutes = state.Started is { } started && ends is [.., var until] ? Math.Max(1, (int)Math.Ceiling((until - started).TotalMinutes)) : without;
        var moved = minutes - without;
        return run.WithStep(step, one => one with { ByCore = moved, ByCoreTold = Math.Abs(moved - one.ByCoreTold) < Trembles ? one.ByCoreTold : moved });
    }

    /// <summary>What comes out of the heat before it has begun again is no longer what was read.</summary>
    Run WithoutReadingsOutOfHeat(StepId step) =>
        CoreStepOf(Meal.Step(step)) is { } core && IntoTheHeat(core) is null
            ? WithStep(core.Id, state => state with { Readings = [], Covers = [], CoversBefore = [], Foil = [], Vouched = null, ByCore = 0, ByCoreTold = 0 })
            : this;

    static ProbeReading Probe(CoreReading reading) => new(reading.At, (double)reading.Celsius);
}
