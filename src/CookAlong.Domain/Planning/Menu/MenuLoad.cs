using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Menu;

/// <summary>What the chosen dishes ask of a kitchen in the two hours before a table, against what it has: arithmetic, before any planning.</summary>
/// <param name="From">Where the two hours begin.</param>
/// <param name="Clashes">Dishes that want the only oven at the same time at heats that do not meet, longest first.</param>
public sealed record MenuLoad(CourseId Course, Minute From, Minute To, ImmutableArray<RoomLoad> Rooms, ImmutableArray<HeatClash> Clashes)
{
    public const int Minutes = 120;

    /// <summary>For the table of the course with most dishes, the first of them where several have as many.</summary>
    public static MenuLoad Of(Meal meal)
    {
        var course = meal.Courses.OrderByDescending(course => meal.Dishes.Count(dish => dish.Course == course.Id)).ThenBy(course => course.TableTime).First();
        var (from, to) = (course.TableTime - Minutes, course.TableTime);
        var bounds = new Bounds(meal);
        return new MenuLoad(
            course.Id,
            from,
            to,
            [
                Load(RoomKind.Oven, meal.Kitchen.Ovens.Sum(oven => oven.Shelves) * Minutes, way => way.Uses.Oven?.Shelves ?? 0),
                Load(RoomKind.Rings, meal.Kitchen.Rings * Minutes, way => way.Uses.Rings),
                Load(RoomKind.Hands, meal.Helpers.Sum(helper => helper.MinutesHere(from, to)), way => way.Attention == Attention.HandsOn ? way.People : 0),
            ],
            meal.Kitchen.Ovens.Length == 1 ? [.. HeatClash.All(meal, bounds, from, to)] : []);

        RoomLoad Load(RoomKind kind, int has, Func<Way, int> takes) => RoomLoad.Of(kind, has, takes, meal, bounds, from, to);
    }
}

public enum RoomKind { Oven, Rings, Hands }
