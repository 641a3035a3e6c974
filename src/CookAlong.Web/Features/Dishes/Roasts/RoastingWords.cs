using System.Globalization;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Doneness.Rules;

namespace CookAlong.Web.Features.Dishes.Roasts;

/// <summary>Joints and their roasting in words.</summary>
public static class RoastingWords
{
    public const string Caution = "The thermometer decides, not the clock: every one of these times is a guess about a joint that nobody has seen. Probe the thickest part, away from the bone.";

    public static string Of(Cut cut) => cut switch
    {
        Cut.WholeTurkey => "Turkey, whole",
        Cut.TurkeyBreast => "Turkey breast",
        Cut.WholeChicken => "Chicken, whole",
        Cut.WholeDuck => "Duck, whole",
        Cut.WholeGoose => "Goose, whole",
        Cut.BeefRib => "Beef, rib",
        Cut.BeefRound => "Beef, topside or silverside",
        Cut.BeefFillet => "Beef, fillet",
        Cut.LambLegOnTheBone => "Lamb, leg on the bone",
        Cut.LambLegRolled => "Lamb, leg boned and rolled",
        Cut.PorkLoin => "Pork, loin",
        Cut.PorkShoulder => "Pork, shoulder",
        Cut.PorkFillet => "Pork, fillet",
        Cut.VealRib => "Veal, rib",
        Cut.VealLoin => "Veal, loin",
        Cut.RawHam => "Ham, raw",
        Cut.CookedHam => "Ham, cooked, to be warmed",
        _ => throw new System.Diagnostics.UnreachableException(cut.ToString()),
    };

    /// <summary>"2 h 30 min to 3 h", "3 h 10 min".</summary>
    public static string Range(TimeSpan least, TimeSpan most)
    {
        var (from, to) = (DurationWords.Write(Minutes(least)), DurationWords.Write(Minutes(most)));
        return from == to ? from : $"{from} to {to}";
    }

    /// <summary>"oven 163 °C, to 74 °C in the middle"; a rule that prints no core temperature says so.</summary>
    public static string Conditions(RuleTime time) => string.Create(
        CultureInfo.InvariantCulture,
        $"{(time.Printed is { } printed ? $"{DurationWords.Write(Minutes(printed))} is printed, as far as the rules lie apart; " : "")}oven {time.Rule.OvenCelsius:0} °C, {(time.Rule.CoreCelsius is { } core ? $"to {core:0} °C in the middle" : "no core temperature printed")}");

    /// <summary>What the model says: a range, or why none.</summary>
    public static string Of(CoreForecast model, DateTimeOffset @in) => model switch
    {
        CoreForecast.RangeOnly { Latest: { } latest } range => Range(range.Earliest - @in, latest - @in),
        CoreForecast.RangeOnly range => $"{DurationWords.Write(Minutes(range.Earliest - @in))} or much more: it may never get there in this oven",
        CoreForecast.Never never => string.Create(CultureInfo.InvariantCulture, $"never: in this oven its middle comes to {never.Highest:0} °C and no further"),
        CoreForecast.Refused refused => Of(refused.Why),
        // Without readings there is nothing to reach, to expect or to doubt.
        _ => throw new System.Diagnostics.UnreachableException(model.GetType().Name),
    };

    public static string Of(CoreRefusal refusal) => refusal switch
    {
        CoreRefusal.WeightOutOfRange weight => string.Create(CultureInfo.InvariantCulture, $"{weight.Kilograms:0.##} kg is no joint that can be reckoned with: {weight.Least:0.#} to {weight.Most:0} kg."),
        CoreRefusal.Frozen => "There is still ice in it. Thaw it first; nobody can say how long a frozen joint takes.",
        CoreRefusal.TargetOutOfRange target => string.Create(CultureInfo.InvariantCulture, $"{target.Celsius:0} °C is no core temperature: 30 to 99 °C."),
        CoreRefusal.OvenOutOfRange oven => string.Create(CultureInfo.InvariantCulture, $"An oven of {oven.Celsius:0} °C cannot be reckoned with: up to 300 °C."),
        CoreRefusal.StartOutOfRange start => string.Create(CultureInfo.InvariantCulture, $"A joint of {start.Celsius:0} °C is warm already: up to 40 °C as it goes in."),
        CoreRefusal.OvenOutOfOrder => "The oven's temperature is not known.",
        _ => throw new System.Diagnostics.UnreachableException(refusal.GetType().Name),
    };

    /// <summary>To five minutes: nothing here is better known.</summary>
    public static int Minutes(TimeSpan span) => (int)(Math.Round(span.TotalMinutes / 5) * 5);
}
