using System.Collections.Immutable;
using CookAlong.Domain.FoodSafety;

namespace CookAlong.Domain.Debrief;

/// <summary>How long a dish had been neither hot nor cold when its course came to the table.</summary>
/// <param name="Out">As far as its steps tell.</param>
/// <param name="Unknown">Gaps of which nobody has said where it was.</param>
public sealed record DishStanding(DishId Dish, TimeSpan Out, TimeSpan Unknown, TimeLimit Limit)
{
    public bool IsTooLong => Out > Limit.Most;

    /// <summary>Empty where the household's authority has no limit for it, or nobody had chosen one yet.</summary>
    internal static ImmutableArray<DishStanding> Of(RunStory story, ImmutableArray<DishWait> served) =>
        story.Run.OutAtMost is not { } limit ? []
        : [
            .. from wait in served
               let standing = story.Run.StandingOf(story.Meal.Dishes.Single(dish => dish.Id == wait.Dish), wait.Table > wait.Since ? wait.Table : wait.Since)
               where standing is not null
               select new DishStanding(wait.Dish, standing.Known, standing.Unknown, limit),
        ];
}
