using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Features.Live.More;

/// <summary>Dishes of the library that a meal which is being cooked may have as well.</summary>
public sealed class MoreDishes(DishBook library)
{
    /// <summary>By name, each for every course whose table is yet to come.</summary>
    public async Task<ImmutableArray<MoreDish>> OfAsync(Run run, DateTimeOffset now, CancellationToken stop)
    {
        var here = run.Menu.Select(dish => dish.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var courses = run.Meal.Courses.Where(course => course.TableTime.Utc > now).ToList();
        return [.. from kept in await library.AllAsync(stop) where kept.Row.DeletedAt is null select Of(kept)];

        MoreDish Of(KeptDish kept) => new(
            kept.Row.Id,
            kept.Dish.Name,
            here.Contains(kept.Dish.Name),
            [.. courses.Select(course => (course, run.SoonestOf(kept.Dish with { Course = course.Id }, now)))],
            [.. run.Meal.Guests.Select(guest => WhoCanEat.Judge(guest, kept.Dish)).Where(judged => judged.Answer != CanEat.NothingFound)]);
    }

    /// <summary>With ids of its own in this run; null when the library has no such dish, or it cannot be part of a meal like this.</summary>
    public async Task<Dish?> ForAsync(Run run, Guid dish, CourseId course)
    {
        if (await library.OpenAsync(dish) is not { } kept || run.Meal.Courses.All(one => one.Id != course))
        {
            return null;
        }

        var document = MealDocument.Of(MealFile.Write(run.Meal with { Dishes = run.Menu }));
        document.Add(kept.Document, dish.ToString(), course);
        return MealFile.Read(document.Text) is { IsGood: true, Meal: var meal } ? meal.Dishes[^1] : null;
    }
}

/// <param name="IsHere">A dish of that name is cooked already, or was left out.</param>
/// <param name="Courses">When it is ready for each by its own steps alone; null = this kitchen has no place for it.</param>
/// <param name="Guests">Who cannot eat it, or must ask.</param>
public sealed record MoreDish(Guid Id, string Name, bool IsHere, ImmutableArray<(Course Course, Minute? Ready)> Courses, ImmutableArray<DishForGuest> Guests);
