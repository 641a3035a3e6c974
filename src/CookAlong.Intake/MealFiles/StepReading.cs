using CookAlong.Domain;
using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

internal static class StepReading
{
    /// <param name="previous">The step before it in its dish; null for the first.</param>
    public static Step Step(Place step, string id, string? previous, MealIds ids)
    {
        if (!step.Has("minutes"))
        {
            step.NoteMissing("minutes", "Add a whole number of minutes, or { \"least\": 15, \"likely\": 20, \"most\": 30 }.");
        }

        var way = WayReading.Way(step, ids, WayReading.Unsaid);
        var options = step.Objects("options", DishDocument.MostOptions).Select(option => WayReading.Way(option, ids, way)).ToImmutableArray();
        return new Step(
            new(id),
            step.Text("text"),
            step.OptionalText("how"),
            step.OptionalText("caution"),
            way,
            options,
            [.. step.Texts("needs", 20).Select(skill => skill.Text)],
            step.Flag("childSafe"),
            After(step, id, previous, ids),
            [.. step.Objects("tend", 20).Select(tend => TendReading.Tend(tend, way, options))],
            step.Time("at", ids.Zone),
            step.Object("window")?.Window(ids.Zone),
            By(step, way, ids),
            Choice(step, options.Length),
            step.Flag("pauseAfter"))
        {
            Core = step.Object("core") is { } core ? CoreWantedReading.Core(core) : null,
        };
    }

    private static ImmutableArray<After> After(Place step, string id, string? previous, MealIds ids)
    {
        if (!step.Has("after"))
        {
            return previous is null ? [] : [new After(new(previous), 0, null)];
        }

        return [.. step.Objects("after", 50).Select(after => After(after, id, ids))];
    }

    private static After After(Place after, string id, MealIds ids)
    {
        var other = after.Text("step", Place.LongestId);
        if (after.Member("step") is { } at)
        {
            ids.Steps.Refer(other, at);
            if (other == id)
            {
                at.Note("The step waits for itself.", "Name the step it really waits for, or leave the entry out.");
            }
        }

        var (least, most) = (0, (int?)null);
        if (after.Object("gap") is { } gap)
        {
            var before = gap.Findings.Count;
            least = gap.Whole("least", 0, HoldReading.Longest, fallback: 0);
            most = gap.OptionalWhole("most", 0, HoldReading.Longest);
            if (gap.Findings.Count == before && most < least)
            {
                gap.Note("most", $"The gap is {least} min at the least but {most} min at the most.", "Let least <= most.");
            }
        }

        return new After(new(other), least, most);
    }

    /// <summary>More names than the step takes people: any of them will do.</summary>
    private static ImmutableArray<HelperId> By(Place step, Way way, MealIds ids)
    {
        var by = step.Texts("by", 50);
        foreach (var (helper, at) in by)
        {
            ids.Helpers.Refer(helper, at);
        }

        if (by.Select(one => one.Text).Distinct().Count() < by.Count)
        {
            step.Note("by", "The same helper is named twice.", "Name each helper once.");
        }

        if (by.Count > 0 && way.Attention != Attention.HandsOn)
        {
            step.Note("by", "The step is given to somebody, but takes no hands.", "Make its attention \"handsOn\", or leave \"by\" out.");
        }

        return [.. by.Select(one => new HelperId(one.Text))];
    }

    private static int? Choice(Place step, int options)
    {
        var choice = step.OptionalWhole("choice", -1, 100);
        if (choice >= options)
        {
            step.Note("choice", $"Option {choice} is chosen, but the step has {options}.", "Count options from 0; -1 is the step as written.");
            return null;
        }

        return choice;
    }
}
