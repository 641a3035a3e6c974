using System.Diagnostics;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Dining;

namespace CookAlong.Web.Features.Live.Wording;

// What those at the table read, and a child: calm words, no seconds, nobody late.
public sealed partial class Words
{
    public const string MealOver = "The kitchen is done. Thank you for waiting so kindly.";

    /// <summary>A span to the nearest five minutes: "in about 20 minutes", "in about 1 hour 10 minutes"; under 8 minutes "soon"; from four hours on to the nearest hour.</summary>
    public static string Roughly(TimeSpan left)
    {
        if (left < TimeSpan.FromMinutes(8))
        {
            return "soon";
        }

        var unit = left < TimeSpan.FromHours(4) ? 5 : 60;
        var minutes = unit * (int)Math.Round(left.TotalMinutes / unit, MidpointRounding.AwayFromZero);
        var (hours, rest) = (minutes / 60, minutes % 60);
        var spoken = hours == 0 ? $"{rest} minutes" : $"{(hours == 1 && rest == 0 ? "an hour" : hours == 1 ? "1 hour" : $"{hours} hours")}{(rest == 0 ? "" : $" {rest} minutes")}";
        return $"in about {spoken}";
    }

    public static string Of(HowFar far) => far switch
    {
        HowFar.ToCome => "still to come",
        HowFar.OnItsWay => "on its way",
        HowFar.BeingMade => "being made",
        HowFar.OnTheHeat => "on the stove",
        HowFar.InTheOven => "in the oven",
        HowFar.Ready => "ready",
        HowFar.Served => "at the table",
        HowFar.NotMade => "not today",
        _ => throw new UnreachableException($"A dish's way without words: {far}."),
    };

    /// <summary>To a child about the job in hand.</summary>
    public static string Kindly(BoardCard card) => card.State switch
    {
        CardState.Waiting or CardState.Due => "Your turn! Begin when you are ready.",
        CardState.Running => "You are doing well.",
        CardState.Over => "Nearly there. Take the time it needs.",
        CardState.Done => "Well done!",
        _ => throw new UnreachableException($"A card's state without kind words: {card.State}."),
    };

    /// <summary>To a child about what is behind them; null before the first job.</summary>
    public static string? Praise(int done) => done switch
    {
        0 => null,
        1 => "Well done: one job finished!",
        _ => $"Well done: {done} jobs finished!",
    };
}
