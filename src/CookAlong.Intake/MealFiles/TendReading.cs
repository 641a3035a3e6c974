using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

internal static class TendReading
{
    private const int Give = 3;

    public static Tend Tend(Place tend, Way way, ImmutableArray<Way> options)
    {
        var before = tend.Findings.Count;
        var every = tend.OptionalWhole("every", 1, HoldReading.Longest);
        var at = tend.OptionalWhole("at", -HoldReading.Longest, HoldReading.Longest);
        var (hasEvery, hasAt) = (tend.Has("every"), tend.Has("at"));
        if (hasEvery == hasAt)
        {
            tend.Note(
                hasEvery ? "The tend has both \"every\" and \"at\"." : "The tend has neither \"every\" nor \"at\".",
                "Give \"every\" n minutes for a repeated job, or \"at\" for one (negative counts back from the end).");
        }

        var read = new Tend(
            tend.Text("text"),
            tend.Whole("minutes", 1, HoldReading.Longest, fallback: 1),
            every,
            at,
            tend.Whole("give", 0, HoldReading.Longest, fallback: Give),
            tend.Flag("childSafe"));
        if (tend.Findings.Count == before)
        {
            NoteMisfit(tend, read, way, options);
        }

        return read;
    }

    private static void NoteMisfit(Place tend, Tend read, Way way, ImmutableArray<Way> options)
    {
        if (read.At is { } at)
        {
            foreach (var length in options.Prepend(way).Select(one => one.Minutes.Likely).Distinct().Where(length => !Fits(read, length)))
            {
                tend.Note("at", $"At {at} the tend cannot lie inside the step's {length} min.", "Choose a time at which it ends before the step does, or shorten it.");
            }
        }
        else if (options.Prepend(way).All(one => !read.Times(one.Minutes.Likely).Any()))
        {
            tend.Note("every", $"Every {read.Every} min never comes round in the step's {way.Minutes.Likely} min.", "Choose a shorter time, or leave the tend out.");
        }
    }

    /// <summary>Some beginning within the give of the nominal time lies wholly inside the step.</summary>
    private static bool Fits(Tend tend, int length)
    {
        var nominal = tend.Times(length).Single();
        return Math.Max(0, nominal - tend.Give) <= Math.Min(length - tend.Minutes, nominal + tend.Give)
            && length >= tend.Minutes;
    }
}
