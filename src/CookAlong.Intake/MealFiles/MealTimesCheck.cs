using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>Times that cannot be: tables in the past, work before the first minute, windows too short.</summary>
internal static class MealTimesCheck
{
    public static void Check(Place root, Meal meal, MealIds ids, Minute? now)
    {
        // A time that could not be read stands at minute 0; it has its note already.
        var courses = meal.Courses.Index().Where(one => one.Item.TableTime.SinceEpoch > 0).ToList();
        var zone = meal.TimeZone;
        foreach (var (index, course) in courses)
        {
            var at = root with { Pointer = $"/courses/{index}/tableTime" };
            if (now is { } present && course.TableTime <= present)
            {
                at.Note(
                    $"The table time {WallClock.Write(course.TableTime, zone)} is in the past: it is {WallClock.Write(present, zone)} now.",
                    "Move the meal to another day, or choose a later table time.");
            }

            if (meal.NotBefore is { } first && course.TableTime <= first)
            {
                at.Note("The table time does not come after \"notBefore\".", "Let the work begin before the table time, or leave \"notBefore\" out.");
            }
        }

        if (courses.Count > 0)
        {
            var begin = meal.NotBefore ?? courses.Min(one => one.Item.TableTime);
            if (courses.Max(one => one.Item.TableTime) - begin > MealFile.MostDays * 24 * 60)
            {
                root.Note(
                    meal.NotBefore is null ? "courses" : "notBefore",
                    $"The meal spans more than {MealFile.MostDays} days.",
                    "Check the dates; make two meals of one that is really so long.");
            }

            var end = courses.Max(one => one.Item.TableTime) + (24 * 60);
            foreach (var step in meal.Steps)
            {
                Check(root with { Pointer = ids.PlaceOf(step) }, step, meal.NotBefore, end);
            }
        }
    }

    private static void Check(Place place, Step step, Minute? first, Minute end)
    {
        if (step.At is { } at)
        {
            if (at < first)
            {
                place.Note("at", "The step is fixed before \"notBefore\".", "Fix it later, or let the work begin earlier.");
            }

            if (at > end)
            {
                place.Note("at", "The step is fixed more than a day after the last table time.", "Check its date.");
            }

            if (step.Window is { } span && !step.Ways.Any(one => span.Holds(at, at + one.Way.Minutes.Likely)))
            {
                place.Note("at", "Fixed there, the step does not lie inside its window.", "Leave \"at\" or \"window\" out, or let them agree.");
            }
        }
        else if (step.Window is { } window)
        {
            if (window.To <= first || window.From > end)
            {
                place.Note("window", "The window lies outside the time of the meal.", "Check its dates.");
            }
            else if (step.Ways.All(one => one.Way.Minutes.Likely > window.To - Minute.Later(window.From, first ?? window.From)))
            {
                place.Note("window", $"The window is too short for the step's {step.Way.Minutes.Likely} min.", "Make the window longer or the step shorter.");
            }
        }
    }
}
