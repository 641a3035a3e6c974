using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

internal static class KitchenReading
{
    /// <summary>°C a food can stand at: from a freezer to a bread oven.</summary>
    public const int Coldest = -40;
    public const int Hottest = 600;

    public static Kitchen Kitchen(Place kitchen, MealIds ids) => new(
        [.. kitchen.Objects("ovens", 10).Select(oven => Oven(oven, ids))],
        kitchen.Whole("rings", 0, 50, fallback: 0),
        [.. kitchen.Objects("grills", 10).Select(grill => Grill(grill, ids))],
        [.. kitchen.Objects("appliances", 50).Select(appliance =>
            new Appliance(new(ids.Appliances.Give(appliance)), appliance.Whole("count", 1, 100, fallback: 1)))])
    {
        Awake = kitchen.Object("awake") is { } hours ? Awake(hours) : WakingHours.Usual,
    };

    private static WakingHours Awake(Place hours)
    {
        var before = hours.Findings.Count;
        var awake = new WakingHours(hours.ClockTime("from"), hours.ClockTime("to"));
        if (hours.Findings.Count > before)
        {
            return WakingHours.Usual;
        }

        if (!awake.HoldNoon)
        {
            hours.Note(
                string.Create(CultureInfo.InvariantCulture, $"Awake from {awake.Up:HH:mm} to {awake.Bed:HH:mm} leaves noon out."),
                "Begin with the hour of getting up, like { \"from\": \"07:00\", \"to\": \"22:00\" }; work in a night is planned for helpers with hours of their own.");
            return WakingHours.Usual;
        }

        return awake;
    }

    private static Oven Oven(Place oven, MealIds ids)
    {
        var id = ids.Ovens.Give(oven);
        var before = oven.Findings.Count;
        var (min, max) = (oven.Whole("minCelsius", 0, Hottest), oven.Whole("maxCelsius", 0, Hottest));
        if (oven.Findings.Count == before && min > max)
        {
            oven.Note("minCelsius", $"The oven's lowest temperature ({min} °C) lies above its highest ({max} °C).", "Swap the two.");
        }

        return new Oven(
            new(id),
            oven.OptionalText("name") ?? id,
            oven.Whole("shelves", 1, 50),
            oven.Flag("fan"),
            min,
            max,
            Rate(oven, "heatUpPerMinute"),
            Rate(oven, "coolDownPerMinute"),
            oven.Whole("startsAtCelsius", Coldest, Hottest, fallback: 20))
        {
            ReadsHighBy = oven.Whole("readsHighBy", -MostAstray, MostAstray, fallback: 0),
        };
    }

    /// <summary>°C beside its dial that an oven may stand; one that is farther off wants mending.</summary>
    private const int MostAstray = 60;

    /// <summary>Slower than a tenth of a degree a minute takes a day to heat; faster than a hundred is no oven.</summary>
    private static decimal Rate(Place oven, string name)
    {
        const decimal Slowest = 0.1m;
        const decimal Fastest = 100;
        var before = oven.Findings.Count;
        var rate = oven.Number(name, above: 0, most: 1_000_000);
        if (oven.Findings.Count > before || (rate >= Slowest && rate <= Fastest))
        {
            return rate;
        }

        oven.Note(
            name,
            string.Create(CultureInfo.InvariantCulture, $"No oven changes by {rate} °C a minute; \"{name}\" goes from {Slowest} to {Fastest}."),
            "Measure how long the oven takes over 100 °C, and divide 100 by those minutes.");
        return 1;
    }

    private static Grill Grill(Place grill, MealIds ids)
    {
        var id = ids.Grills.Give(grill);
        return grill.Member("insideOven") is { } inside && inside.AsText(Place.LongestId) is { } oven
            ? new Grill(new(id), new OvenId(ids.Ovens.Refer(oven, inside)))
            : new Grill(new(id), null);
    }

    /// <summary>{min, ideal, max}; ideal is the middle when it is not given.</summary>
    public static CelsiusRange Celsius(Place parent)
    {
        if (parent.Object("celsius") is not { } range)
        {
            if (!parent.Has("celsius"))
            {
                parent.NoteMissing("celsius", "Add \"celsius\": { \"min\": 175, \"ideal\": 180, \"max\": 185 }.");
            }

            return default;
        }

        var before = range.Findings.Count;
        var (min, max) = (range.Whole("min", 0, Hottest), range.Whole("max", 0, Hottest));
        var ideal = range.OptionalWhole("ideal", 0, Hottest) ?? (min + max) / 2;
        if (range.Findings.Count == before && !(min <= ideal && ideal <= max))
        {
            range.Note($"The range {min} to {max} °C with {ideal} °C as its best is out of order.", "Let min <= ideal <= max.");
        }

        return new CelsiusRange(min, ideal, max);
    }
}
