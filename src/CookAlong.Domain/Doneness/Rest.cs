using System.Collections.Immutable;
using CookAlong.Domain.Doneness.Forecasts;
using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Doneness;

/// <summary>What a joint does after it has come out.</summary>
public abstract record RestForecast
{
    /// <param name="Peak">°C in the middle at its hottest.</param>
    /// <param name="Rise">°C from coming out to the peak.</param>
    /// <param name="PeakAfter">From coming out.</param>
    /// <param name="MiddleHot">How long after coming out the middle is at the limit asked for, or above; zero = it never is.</param>
    /// <param name="OutsideHot">The same for its surface, which is the first to be too cold.</param>
    /// <param name="CoolestMiddle">
    /// Minute by minute from the last reading through coming out, the temperature that nineteen in twenty such joints have at the least;
    /// for <see cref="FoodSafety.Lethality"/>.
    /// </param>
    public sealed record Expected(DegreeSpread Peak, DegreeSpread Rise, TimeSpread PeakAfter, TimeSpread MiddleHot, TimeSpread OutsideHot, ImmutableArray<(DateTimeOffset At, double Celsius)> CoolestMiddle) : RestForecast;

    /// <summary>The readings do not say enough to start from; why.</summary>
    public sealed record NotKnown(CoreForecast Why) : RestForecast;

    /// <summary>It came out before it went in or before the last reading, or the room is no room.</summary>
    public sealed record Refused : RestForecast;
}

/// <summary>°C; nine times in ten between the ends.</summary>
public readonly record struct DegreeSpread(double Low, double Likely, double High);

/// <summary>Nine times in ten between the ends.</summary>
public readonly record struct TimeSpread(TimeSpan Low, TimeSpan Likely, TimeSpan High);

/// <summary>Carry-over and rest: how far the middle still rises, when it is hottest, how long it stays hot.</summary>
public static class Rest
{
    /// <summary>How far ahead it looks.</summary>
    public static readonly TimeSpan Horizon = TimeSpan.FromHours(4);

    /// <summary>°C of a room that food rests in.</summary>
    public const int LeastRoom = 0, MostRoom = 45;

    static readonly TimeSpan Step = TimeSpan.FromMinutes(1);

    /// <summary>
    /// W/(m² K) and wetness of a resting surface. Free convection and radiation; bright foil radiates little but lets steam
    /// out, cloths hold still air. Own estimate: textbooks have 5 to 20 for free convection (from memory); with these the middle rises
    /// as much as the trade has seen.
    /// </summary>
    static (double Coefficient, double Wetness) Of(RestUnder under) => under switch
    {
        RestUnder.Nothing => (12, .3),
        RestUnder.Foil => (10, .15),
        RestUnder.FoilAndCloths => (6, .06),
        _ => throw new System.Diagnostics.UnreachableException(under.ToString()),
    };

    /// <param name="outAt">When it comes, or came, out.</param>
    /// <param name="covers">What lies over it, in order of time; one at the least.</param>
    /// <param name="hotCelsius">The limit it is to stay above, as <see cref="FoodSafety.Holding.Hot"/> has it for the household's region.</param>
    public static RestForecast Forecast(Roasting roasting, IReadOnlyList<ProbeReading> readings, DateTimeOffset outAt, IReadOnlyList<RestCover> covers, double hotCelsius)
    {
        var (known, problem) = Understood.Of(roasting, readings);
        if (problem is not null)
        {
            return new RestForecast.NotKnown(problem);
        }

        var minutes = (outAt - roasting.In).TotalMinutes;
        if (minutes < known.Now || minutes > known.Horizon || !(roasting.RoomCelsius is >= LeastRoom and <= MostRoom))
        {
            return new RestForecast.Refused();
        }

        // The same over every joint that is drawn, so it is looked up once.
        (double Coefficient, double Wetness)[] over = [.. Enumerable.Range(0, (int)(Horizon / Step)).Select(minute => Of(RestCover.At(covers, outAt + (Step * minute))))];
        var rests = known.Joints().All.Select(one => (After: Cooled(one.Cooking, known.Now, minutes, over, roasting.RoomCelsius, Math.Exp(.3 * one.Luck), hotCelsius), one.Weight)).ToArray();
        return new RestForecast.Expected(
            Degrees(rest => rest.Middle.Max()),
            Degrees(rest => rest.Middle.Max() - rest.Middle[0]),
            Times(rest => Array.IndexOf(rest.Middle, rest.Middle.Max())),
            Times(rest => Array.FindLastIndex(rest.Middle, celsius => celsius >= hotCelsius) + (rest.Middle.Any(celsius => celsius >= hotCelsius) ? 0 : 1)),
            Times(rest => rest.OutsideHot),
            [.. Coolest(one => one.Before, outAt - (Step * rests[0].After.Before.Length)), .. Coolest(one => one.Middle, outAt)]);

        IEnumerable<(DateTimeOffset, double)> Coolest(Func<Rested, double[]> of, DateTimeOffset from) =>
            Enumerable.Range(0, of(rests[0].After).Length).Select(minute => (from + (Step * minute), Quantiles.OfRange(rests.Select(one => (of(one.After)[minute], one.Weight))).Low));

        DegreeSpread Degrees(Func<Rested, double> of)
        {
            var (low, likely, high) = Quantiles.OfRange(rests.Select(one => (of(one.After), one.Weight)));
            return new(low, likely, high);
        }

        TimeSpread Times(Func<Rested, int> of)
        {
            var (low, likely, high) = Quantiles.OfRange(rests.Select(one => ((double)of(one.After), one.Weight)));
            return new(Step * low, Step * likely, Step * high);
        }
    }

    /// <param name="Before">°C of the middle, minute by minute until coming out.</param>
    /// <param name="Middle">From then on.</param>
    /// <param name="OutsideHot">Minutes.</param>
    sealed record Rested(double[] Before, double[] Middle, int OutsideHot);

    static Rested Cooled(Cooking cooking, double now, double minutes, (double Coefficient, double Wetness)[] over, double room, double more, double hot)
    {
        // To the step that ends last before it comes out; a step is a two-hundredth of the time heat needs to get through.
        var before = new double[(int)((minutes - now) / Step.TotalMinutes)];
        for (var minute = 0; minute < before.Length; minute++)
        {
            before[minute] = cooking.CoreAt(minutes - (Step.TotalMinutes * (before.Length - minute)));
        }

        cooking.CoreAt(minutes);
        var joint = cooking.Joint;
        var (middle, outside) = (new double[over.Length], 0);
        for (var minute = 0; minute < middle.Length; minute++)
        {
            middle[minute] = joint.Core;
            outside = joint.Surface >= hot ? minute : outside;
            var (coefficient, wetness) = over[minute];
            joint.Step(new Surface(room, coefficient * more, wetness), Step.TotalSeconds);
        }

        return new(before, middle, outside);
    }
}
