using System.Globalization;
using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Kitchens;
using CookAlong.Web.Data;

namespace CookAlong.Web.Features.Debrief.Ovens;

/// <summary>Every sentence about measured ovens.</summary>
public static class OvenWords
{
    public static string Heats(decimal perMinute) => string.Create(CultureInfo.InvariantCulture, $"{perMinute:0.#} °C a minute");

    public static string Astray(int readsHighBy) => readsHighBy switch
    {
        0 => "right",
        > 0 => $"shows {readsHighBy} °C more than it is",
        < 0 => $"shows {-readsHighBy} °C less than it is",
    };

    public static string Guessed(int readsHighBy, int joints) =>
        $"perhaps {Astray(readsHighBy)}: {joints} joints roasted as if it did. Stand a thermometer in it before you trust this";

    public static string Seen(OvenFigure figure) => figure.Seen == 1 ? "measured once" : $"measured {figure.Seen} times";

    public static string Recovery(OvenFigure figure) =>
        $"After the door was open for half a minute it is as hot as before in {Math.Max(1, (int)Math.Round(figure.Value))} min.";

    /// <summary>What it is planned with now.</summary>
    public static (string Heats, string Cools, string Dial) Present(Oven oven) => (Heats(oven.HeatUpPerMinute), Heats(oven.CoolDownPerMinute), Astray(oven.ReadsHighBy));

    public static string Doubt(OvenDoubt doubt) => $"{Part(doubt.Part)}: {Why(doubt.Why)}";

    public static string Step(OvenGuidePart part, int dial) => part switch
    {
        OvenGuidePart.Heating => "Read the thermometer every two minutes while it heats. Look through the glass; the door stays shut.",
        OvenGuidePart.Hot => $"It should be near {dial} °C. Three more readings, two minutes apart, show where it settles.",
        OvenGuidePart.OpenDoor => "Open the door wide, count slowly to thirty, and shut it. Then say so here.",
        OvenGuidePart.Recovering => "Read the thermometer every minute, five times.",
        OvenGuidePart.TurnOff => "Turn the oven off, door shut. Then say so here.",
        OvenGuidePart.Cooling => "Read the thermometer as it cools, five times, two minutes apart.",
        OvenGuidePart.Enough => "That is enough. Finish, and see what it tells.",
        OvenGuidePart.Done => "Done.",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static string When(OvenTrialRow row, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(DateTimeOffset.FromUnixTimeMilliseconds(row.Began), zone).ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    static string Part(OvenPart part) => part switch
    {
        OvenPart.Heating => "How fast it heats",
        OvenPart.Hot => "Its dial",
        OvenPart.Door => "After the door",
        OvenPart.Cooling => "How fast it cools",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    static string Why(OvenWhy why) => why switch
    {
        OvenWhy.TooFew => "too few readings to say anything.",
        OvenWhy.Contradictory => "the readings contradict each other, so nothing is learned from them. Was the door opened, or the thermometer moved?",
        OvenWhy.Unlikely => "the readings say what hardly any oven does, so nothing is learned from them.",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
