using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>Steps that wait for each other in a circle never begin.</summary>
internal static class MealOrderCheck
{
    private enum Mark { OnTheWay, Done }

    public static void Check(Place root, Meal meal, MealIds ids)
    {
        var steps = new Dictionary<StepId, Step>();
        foreach (var step in meal.Steps)
        {
            steps.TryAdd(step.Id, step);
        }

        var marks = new Dictionary<StepId, Mark>();
        foreach (var step in steps.Values)
        {
            Walk(root, step, steps, marks, ids);
        }
    }

    /// <summary>Depth first, with an own stack: a thousand steps in a row must not exhaust the thread's.</summary>
    private static void Walk(Place root, Step first, Dictionary<StepId, Step> steps, Dictionary<StepId, Mark> marks, MealIds ids)
    {
        if (!marks.TryAdd(first.Id, Mark.OnTheWay))
        {
            return;
        }

        var way = new List<(Step Step, int Next)> { (first, 0) };
        while (way.Count > 0)
        {
            var (step, next) = way[^1];
            if (next == step.After.Length)
            {
                marks[step.Id] = Mark.Done;
                way.RemoveAt(way.Count - 1);
                continue;
            }

            way[^1] = (step, next + 1);
            if (!steps.TryGetValue(step.After[next].Step, out var other) || other.Id == step.Id)
            {
                // An unknown step or itself: noted where it was read.
                continue;
            }

            if (marks.TryAdd(other.Id, Mark.OnTheWay))
            {
                way.Add((other, 0));
            }
            else if (marks[other.Id] == Mark.OnTheWay)
            {
                NoteCircle(root, [.. way.Select(one => one.Step).SkipWhile(one => one.Id != other.Id)], ids);
            }
        }
    }

    private static void NoteCircle(Place root, List<Step> circle, MealIds ids)
    {
        // Each waits for the next; a long circle is cut for the sentence.
        const int shown = 8;
        var names = circle.Take(shown).Select(step => $"\"{Place.Short(step.Id.Value)}\"").ToList();
        var tail = circle.Count > shown ? $"{circle.Count - shown} more, which wait for {names[0]} again" : $"{names[0]} again";
        (root with { Pointer = ids.PlaceOf(circle[0]) }).Note(
            "after",
            $"These steps wait for each other in a circle: {string.Join(" waits for ", names)} waits for {tail}.",
            "Take one of them out of another's \"after\".");
    }
}
