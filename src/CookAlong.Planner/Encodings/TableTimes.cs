using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>TableTime: a course is served all at once, never before its promised table time.</summary>
internal static class TableTimes
{
    public static LinearExpr Of(MealModel model, Course course)
    {
        var promised = model.Clock.Of(course.TableTime);
        if (model.So is { } so && IsServed(model, so, course))
        {
            return LinearExpr.Constant(model.Clock.Of(so.Current.TableTime(course.Id)));
        }

        if (model.Clock.MostLate == 0)
        {
            return LinearExpr.Constant(promised);
        }

        // A meal already running late counts its lateness from now, so that a plan stays possible.
        var latest = Math.Max(promised, model.Clock.Earliest) + model.Clock.MostLate;
        var table = model.Time(promised, latest, $"table {course.Id}");
        model.Charge(table - promised, Prices.LateMinute);
        model.OpenTables.Add((table, promised));
        return table;
    }

    /// <summary>Every step of it is finished, and before its table time, which is past, and has not been put off since.</summary>
    private static bool IsServed(MealModel model, SoFar so, Course course)
    {
        var table = so.Current.TableTime(course.Id);
        return model.Clock.Of(table) <= model.Clock.Earliest && course.TableTime <= table
            && model.Meal.Dishes.Where(dish => dish.Course == course.Id).SelectMany(dish => dish.Steps)
                .All(step => so.Facts.Any(fact => fact.Step == step.Id && fact.IsFinished && fact.End <= table));
    }
}
