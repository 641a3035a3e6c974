using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>How good a plan is, in the sentences above it.</summary>
public static class PlanHeadline
{
    /// <summary>An average lateness from which on it is told, in minutes.</summary>
    const int WorthSaying = 5;

    /// <summary>Table times, and whether they are kept.</summary>
    public static string TableTimes(Meal meal, Plan plan)
    {
        var courses = plan.Courses.OrderBy(course => course.TableTime).Select(course =>
            $"{meal.Courses.Single(one => one.Id == course.Course).Name} at {PlaceNames.Clock(course.TableTime, meal.TimeZone)}{(course.LateMinutes > 0 ? $", {Minutes(course.LateMinutes)} late" : "")}");
        var words = string.Join("; ", courses);
        return plan.Courses.All(course => course.LateMinutes == 0) ? $"{words}: on time." : $"{words}.";
    }

    /// <summary>The chance of serving on time; null when nobody has cooked it through yet.</summary>
    public static string? Chance(Plan plan)
    {
        if (plan.Confidence is not { } confidence)
        {
            return null;
        }

        var late = (int)Math.Round(confidence.ExpectedLateMinutes, MidpointRounding.AwayFromZero);
        var usually = late >= WorthSaying ? $", {Minutes(late)} late on average" : "";
        return $"Served within 10 minutes of it on {SureWords.Of100(confidence.OnTimeWithin10)} days{usually}.";
    }

    /// <summary>How far from the best there could be.</summary>
    public static string Gap(Plan plan) => plan.Status switch
    {
        PlanStatus.Optimal => "Proven: there is no better plan, all in all.",
        PlanStatus.Feasible when plan.Gap >= 1 => "A plan that holds; how much better one could be is not known.",
        PlanStatus.Feasible => $"A plan that holds, at most {Math.Ceiling(plan.Gap * 100):0}\u00A0% from the best there could be.",
        PlanStatus.None => "No plan holds.",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Said where two plans are held side by side; null when both are proven the best.</summary>
    public static string? MayBeChance(Plan one, Plan other) => (one.Gap > 0, other.Gap > 0) switch
    {
        (false, false) => null,
        (true, true) => "Neither plan is proven the best there could be: a difference may be chance.",
        _ => "One of the two plans is not proven the best there could be: a difference may be chance.",
    };

    /// <summary>"25 min", "2 h", "2 h 20 min".</summary>
    public static string Minutes(int minutes) => (minutes / 60, minutes % 60) switch
    {
        (0, var rest) => $"{rest} min",
        (var hours, 0) => $"{hours} h",
        var (hours, rest) => $"{hours} h {rest} min",
    };
}
