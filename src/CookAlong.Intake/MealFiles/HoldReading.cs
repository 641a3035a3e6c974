using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>
/// A hold says its limit; goodFor not given is the limit, bestWithin not given is goodFor (waiting is free),
/// least not given is 0.
/// </summary>
internal static class HoldReading
{
    /// <summary>Longest minutes of anything in a meal: a week.</summary>
    public const int Longest = 7 * 24 * 60;

    private const int StandFirst = 20;

    public static IReadOnlyDictionary<string, HoldPlace> Places { get; } = new Dictionary<string, HoldPlace>(StringComparer.Ordinal)
    {
        ["table"] = HoldPlace.Table,
        ["side"] = HoldPlace.Side,
        ["covered"] = HoldPlace.Covered,
        ["warmOven"] = HoldPlace.WarmOven,
        ["fridge"] = HoldPlace.Fridge,
    };

    public static Hold Hold(Place hold)
    {
        var before = hold.Findings.Count;
        if (!hold.Has("place"))
        {
            hold.NoteMissing("place", $"Write one of: {string.Join(", ", Places.Keys)}.");
        }

        var place = hold.OneOf("place", Places) ?? HoldPlace.Table;
        var limit = hold.Whole("limit", 0, Longest);
        var goodFor = hold.Whole("goodFor", 0, Longest, fallback: limit);
        var bestWithin = hold.Whole("bestWithin", 0, Longest, fallback: goodFor);
        var least = hold.Whole("least", 0, Longest, fallback: 0);
        if (hold.Findings.Count == before)
        {
            NoteOrder(hold, least, bestWithin, goodFor, limit);
        }

        var cost = hold.Whole("costPerMinute", 0, 10_000, fallback: 1);
        return new Hold(place, least, bestWithin, goodFor, limit, cost, place == HoldPlace.WarmOven ? WarmOven(hold) : null);
    }

    private static void NoteOrder(Place hold, int least, int bestWithin, int goodFor, int limit)
    {
        if (least > limit)
        {
            hold.Note("least", $"The dish must rest {least} min but may wait {limit} min at the most.", "Let least <= limit.");
        }

        if (bestWithin > goodFor)
        {
            hold.Note("bestWithin", $"The dish is at its best for {bestWithin} min but good for {goodFor} min only.", "Let bestWithin <= goodFor.");
        }

        if (goodFor > limit)
        {
            hold.Note("goodFor", $"The dish is good for {goodFor} min but may wait {limit} min at the most.", "Let goodFor <= limit.");
        }
    }

    private static WarmOven WarmOven(Place hold) => new(
        KitchenReading.Celsius(hold),
        hold.Whole("shelves", 1, 50, fallback: 1),
        hold.Whole("standFirst", 0, Longest, fallback: StandFirst));
}
