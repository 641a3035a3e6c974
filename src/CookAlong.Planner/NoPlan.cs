using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>What a planner answers where it found none.</summary>
internal static class NoPlan
{
    public static Plan Of(Meal meal, Minute origin) => new(
        PlanStatus.None,
        Gap: 1,
        SolveMilliseconds: 0,
        origin,
        [.. meal.Courses.Select(course => new PlannedCourse(course.Id, course.TableTime, course.TableTime))],
        Steps: [],
        Tends: [],
        Holds: [],
        Ovens: [],
        new PlanCost(0, 0, 0, 0, 0),
        Confidence: null,
        Conflicts: []);
}
