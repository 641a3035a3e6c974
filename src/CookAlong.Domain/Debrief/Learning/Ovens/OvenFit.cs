using System.Collections.Immutable;

namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <summary>
/// Straight lines and levels through few readings of which some are wrong: the median of all slopes between two of them (Theil 1950,
/// Sen 1968; from memory), and the median of levels. Bounds are own estimates.
/// </summary>
public static class OvenFit
{
    const int LeastOfLine = 4, LeastOfLevel = 3, LeastTaps = 3;

    /// <summary>Of the way to where it settles, an oven climbs as on a line; above that its thermostat has a say.</summary>
    const double Climbs = .85;

    /// <summary>An oven thermometer shows what was a minute or two ago: its first minutes are left out.</summary>
    const double Lag = 2;

    /// <summary>Minutes after the door was shut that belong to the recovery.</summary>
    internal const double Recovers = 12;

    /// <summary>°C. A thermostat lets it swing by as much to either side; beyond that readings contradict each other.</summary>
    const double Swing = 12, OffTheLine = 12;

    /// <summary>°C a minute; what climbs faster has not settled.</summary>
    const double Still = 1.5;

    /// <summary>°C below the level at which it counts as hot again.</summary>
    const double AsHot = 5;

    // What kitchen ovens do, with room on both sides: heating 2 to 60 °C a minute, cooling 0.3 to 20, a dial astray by 60.
    static readonly (double Least, double Most) Heats = (2, 60), Cools = (.3, 20), Astray = (-60, 60);

    /// <param name="trials">Each is weighed alike.</param>
    /// <param name="taps">Count together, from three on, as one more measuring of the heating.</param>
    /// <param name="entries">Count together, from three on, as one more measuring of the dial.</param>
    /// <param name="joints">Weigh little: asked only where no thermometer has told of the dial.</param>
    public static OvenLearned Of(IReadOnlyCollection<OvenTrial> trials, IReadOnlyCollection<HotTap> taps, IReadOnlyCollection<DialReading>? entries = null, IReadOnlyCollection<JointReading>? joints = null)
    {
        var doubts = ImmutableArray.CreateBuilder<OvenDoubt>();
        var (heat, level, door, cool) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
        foreach (var trial in trials)
        {
            Take(heat, OvenPart.Heating, Heating(trial));
            Take(level, OvenPart.Hot, Level(trial) switch { (null, var why) => (null, why), (var hot, _) => InRange(trial.Dial - hot!.Value, Astray) });
            Take(cool, OvenPart.Cooling, trial.Off is null ? (null, null) : Cooling(trial));
            Take(door, OvenPart.Door, trial.DoorShut is null ? (null, null) : Recovery(trial));
        }

        if (taps.Count >= LeastTaps)
        {
            Take(heat, OvenPart.Heating, Taps(taps));
        }

        if (entries?.Count > 0)
        {
            Take(level, OvenPart.Hot, Entries(entries));
        }

        var byJoints = level.Count == 0 ? OvenByJoints.Of(joints ?? []) : null;
        return new(Figure(heat), Figure(cool), byJoints ?? Figure(level), Figure(door), [.. doubts.Distinct()]) { ByJoints = byJoints?.Seen ?? 0 };

        void Take(List<double> figures, OvenPart part, (double? Figure, OvenWhy? Why) found)
        {
            if (found.Figure is { } figure)
            {
                figures.Add(figure);
            }
            else if (found.Why is { } why)
            {
                doubts.Add(new(part, why));
            }
        }
    }

    static OvenFigure? Figure(List<double> figures) => figures.Count == 0 ? null : new(Median(figures), figures.Count);

    static (double? Figure, OvenWhy? Why) Heating(OvenTrial trial)
    {
        var before = Before(trial).ToArray();
        if (before.Length == 0)
        {
            return (null, OvenWhy.TooFew);
        }

        // Where it settles may not be known: then up to the warmest but one, which one wrong reading does not move.
        var warm = before.Select(one => one.Celsius).OrderDescending().Skip(before.Length > 4 ? 1 : 0).First();
        var cold = before[0].Celsius;
        var stop = cold + ((Math.Min(warm, Level(trial).Celsius ?? warm) - cold) * Climbs);
        // A wrong reading on the way does not end the climb; the second above the stop does.
        var over = before.Where(one => one.Celsius > stop).Skip(1).Select(one => (double?)one.Minute).FirstOrDefault() ?? double.MaxValue;
        return Line([.. before.Where(one => one.Minute >= Lag && one.Minute < over && one.Celsius <= stop)], +1, Heats);
    }

    /// <summary>The height around which it settles: of the last readings before the door, those that no more climb.</summary>
    static (double? Celsius, OvenWhy? Why) Level(OvenTrial trial)
    {
        var before = Before(trial).ToArray();
        var warm = before.Select(one => one.Celsius).OrderDescending().Skip(before.Length > 4 ? 1 : 0).FirstOrDefault();
        var first = before.Where(one => one.Celsius > warm - (2 * Swing)).Select(one => (double?)one.Minute).FirstOrDefault();
        var settled = before.Where(one => first is { } from && one.Minute >= from).ToArray();
        while (settled.Length > LeastOfLevel && Slope(settled) > Still)
        {
            settled = settled[1..];
        }

        if (settled.Length < LeastOfLevel || Slope(settled) > Still)
        {
            return (null, OvenWhy.TooFew);
        }

        var level = Median(settled.Select(one => one.Celsius));
        return Median(settled.Select(one => Math.Abs(one.Celsius - level))) > Swing ? (null, OvenWhy.Contradictory) : (level, null);
    }

    static (double? Figure, OvenWhy? Why) Cooling(OvenTrial trial) =>
        Line([.. trial.Readings.Where(one => one.Minute >= trial.Off!.Value + Lag)], -1, Cools);

    /// <summary>The first of two readings in a row that are as hot as before; between it and the one before lies the moment.</summary>
    static (double? Figure, OvenWhy? Why) Recovery(OvenTrial trial)
    {
        if (Level(trial).Celsius is not { } level)
        {
            return (null, OvenWhy.TooFew);
        }

        var shut = trial.DoorShut!.Value;
        var after = trial.Readings.Where(one => one.Minute >= shut && one.Minute <= Math.Min(shut + Recovers, trial.Off ?? double.MaxValue)).ToArray();
        if (after.Length < LeastOfLevel)
        {
            return (null, OvenWhy.TooFew);
        }

        var back = Array.FindIndex(after, one => one.Celsius >= level - AsHot);
        return back < 0 ? (null, OvenWhy.Contradictory)
            : back == 0 ? (after[0].Minute - shut, null)
            : (Between(after[back - 1], after[back], level - AsHot) - shut, null);
    }

    static (double? Figure, OvenWhy? Why) Taps(IEnumerable<HotTap> taps)
    {
        var rates = taps.Where(tap => tap.Minutes > 0 && tap.To > tap.From).Select(tap => (tap.To - tap.From) / tap.Minutes).ToArray();
        if (rates.Length < LeastTaps)
        {
            return (null, OvenWhy.TooFew);
        }

        var rate = Median(rates);
        return Median(rates.Select(one => Math.Abs(one - rate))) > rate / 3 ? (null, OvenWhy.Contradictory) : InRange(rate, Heats);
    }

    static (double? Figure, OvenWhy? Why) Entries(IReadOnlyCollection<DialReading> entries)
    {
        if (entries.Count < LeastOfLevel)
        {
            return (null, OvenWhy.TooFew);
        }

        var high = Median(entries.Select(one => one.Dial - one.Celsius));
        return Median(entries.Select(one => Math.Abs(one.Dial - one.Celsius - high))) > Swing ? (null, OvenWhy.Contradictory) : InRange(high, Astray);
    }

    /// <param name="way">+1 = it must climb, -1 = it must fall.</param>
    static (double? Slope, OvenWhy? Why) Line(OvenReading[] readings, int way, (double Least, double Most) likely)
    {
        if (readings.Length < LeastOfLine)
        {
            return (null, OvenWhy.TooFew);
        }

        var slope = Slope(readings);
        var foot = Median(readings.Select(one => one.Celsius - (slope * one.Minute)));
        var off = Median(readings.Select(one => Math.Abs(one.Celsius - foot - (slope * one.Minute))));
        return off > OffTheLine || slope * way <= 0 ? (null, OvenWhy.Contradictory) : InRange(slope * way, likely);
    }

    /// <summary>The median of all slopes; 0 where all readings are of one moment.</summary>
    static double Slope(OvenReading[] readings) => Median(
        (from one in readings.Index() from other in readings.Skip(one.Index + 1) where other.Minute > one.Item.Minute select (other.Celsius - one.Item.Celsius) / (other.Minute - one.Item.Minute)).DefaultIfEmpty(0));

    static IEnumerable<OvenReading> Before(OvenTrial trial)
    {
        // The door stands open for half a minute before it is shut.
        var until = Math.Min(trial.DoorShut - .5 ?? double.MaxValue, trial.Off ?? double.MaxValue);
        return trial.Readings.Where(one => one.Minute <= until);
    }

    static double Between(OvenReading before, OvenReading after, double celsius) =>
        after.Celsius <= before.Celsius ? after.Minute : before.Minute + ((after.Minute - before.Minute) * Math.Clamp((celsius - before.Celsius) / (after.Celsius - before.Celsius), 0, 1));

    static (double? Figure, OvenWhy? Why) InRange(double figure, (double Least, double Most) likely) =>
        figure >= likely.Least && figure <= likely.Most ? (figure, null) : (null, OvenWhy.Unlikely);

    static double Median(IEnumerable<double> all)
    {
        var sorted = all.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
