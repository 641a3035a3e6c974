using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;

namespace CookAlong.Domain.Meals;

/// <summary>Everything served for one occasion, in one kitchen, by these people.</summary>
/// <param name="NotBefore">
/// Nothing, preheating included, starts earlier; ovens stand at their starting temperature then.
/// Null lets the planner choose: three hours before the first table time, moved earlier until a plan exists, at most three days.
/// </param>
public sealed record Meal(
    string Name,
    TimeZoneInfo TimeZone,
    Minute? NotBefore,
    ImmutableArray<Course> Courses,
    ImmutableArray<Guest> Guests,
    Kitchen Kitchen,
    ImmutableArray<Helper> Helpers,
    ImmutableArray<Dish> Dishes)
{
    /// <summary>How far before the first table time a plan may begin where <see cref="NotBefore"/> leaves it the choice, in minutes.</summary>
    public const int LongestLead = 3 * 24 * 60;

    public IEnumerable<Step> Steps => Dishes.SelectMany(dish => dish.Steps);

    public Course CourseOf(Dish dish) => Courses.Single(course => course.Id == dish.Course);

    public Dish DishOf(StepId step) => Dishes.Single(dish => dish.Steps.Any(one => one.Id == step));

    public Step Step(StepId id) => Steps.Single(step => step.Id == id);

    public Minute FirstTableTime => Courses.Min(course => course.TableTime);

    public Minute LastTableTime => Courses.Max(course => course.TableTime);
}

/// <summary>Dishes that come to the table together at <paramref name="TableTime"/>.</summary>
public sealed record Course(CourseId Id, string Name, Minute TableTime);

/// <param name="Portion">Appetite; 1 = an adult's.</param>
/// <param name="Avoids">Allergens and other things this guest must not eat, in the words of the meal file.</param>
public sealed record Guest(string Name, decimal Portion, ImmutableArray<string> Diets, ImmutableArray<string> Avoids);
