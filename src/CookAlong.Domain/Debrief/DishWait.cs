using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Debrief;

/// <summary>How long a finished dish stood before its course could come to the table.</summary>
/// <param name="Place">Where the first plan had it wait.</param>
/// <param name="BestWithin">Minutes it is at its best.</param>
/// <param name="GoodFor">Minutes it is good.</param>
public sealed record DishWait(DishId Dish, HoldPlace Place, DateTimeOffset Since, DateTimeOffset Table, int BestWithin, int GoodFor)
{
    /// <summary>0 or more.</summary>
    public int Minutes => Math.Max(0, (int)Math.Round((Table - Since).TotalMinutes));

    internal static ImmutableArray<DishWait> Of(RunStory story, ImmutableArray<CourseLine> courses) =>
    [
        .. from dish in story.Meal.Dishes
           where !dish.Steps.IsEmpty && dish.Steps.All(step => story.IsDone(step.Id))
           let course = courses.Single(one => one.Course == dish.Course)
           where course.Ready is not null
           let planned = story.Plan.Holds.FirstOrDefault(hold => hold.Dish == dish.Id)
           let hold = dish.Holds[planned?.Hold ?? 0]
           // Nobody taps that a course is served: it is taken to be when it was ready, but not before its time.
           select new DishWait(dish.Id, hold.Place, dish.Steps.Max(step => story.StateOf(step.Id).Finished!.Value), Minute.Later(course.Ready!.Value, course.MovedTo ?? course.Promised).Utc, hold.BestWithin, hold.GoodFor),
    ];
}
