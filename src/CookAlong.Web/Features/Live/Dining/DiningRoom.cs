using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Wording;

namespace CookAlong.Web.Features.Live.Dining;

/// <summary>The board as those at the table see it.</summary>
public sealed class DiningRoom(LiveView view)
{
    public IEnumerable<CourseSeen> Courses => view.Board.Courses
        .Select(course => new CourseSeen(course, IsServed(course), When(course), [.. view.Meal.Dishes.Where(dish => dish.Course == course.Course && !dish.Steps.IsEmpty).Select(dish => new DishSeen(dish, FarOf(dish, course)))]))
        .Where(course => course.Dishes.Count > 0);

    string When(BoardCourse course) => IsServed(course) ? Words.Of(HowFar.Served) : Words.Roughly(course.Expected.Utc - view.Board.At);

    bool IsServed(BoardCourse course) => view.IsCooked(course) && course.Expected.Utc <= view.Board.At;

    HowFar FarOf(Dish dish, BoardCourse course)
    {
        var cards = dish.Steps.Select(step => view.Board.Done.Concat(view.Board.Now).Concat(view.Board.Next).FirstOrDefault(card => card.Tend is null && card.Step.Id == step.Id)).ToList();
        var running = cards.OfType<BoardCard>().Where(card => card.State is CardState.Running or CardState.Over).ToList();
        return cards.All(card => card?.State == CardState.Done) ? (IsServed(course) ? HowFar.Served : HowFar.Ready)
            : view.Board.IsOver ? HowFar.NotMade
            : running.Any(card => card.Place.Oven is not null) ? HowFar.InTheOven
            : running.Any(card => card.Place.Rings > 0 || card.Place.Grill is not null) ? HowFar.OnTheHeat
            : running.Count > 0 ? HowFar.BeingMade
            : cards.Any(card => card?.State == CardState.Done) ? HowFar.OnItsWay
            : HowFar.ToCome;
    }
}

/// <param name="When">In words, to five minutes: "in about 20 minutes".</param>
public sealed record CourseSeen(BoardCourse Course, bool IsServed, string When, IReadOnlyList<DishSeen> Dishes);

public sealed record DishSeen(Dish Dish, HowFar Far);

public enum HowFar { ToCome, OnItsWay, BeingMade, OnTheHeat, InTheOven, Ready, Served, NotMade }
