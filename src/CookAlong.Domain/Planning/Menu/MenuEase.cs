using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Menu;

/// <summary>By what a cook compares two menus; all in minutes but the dial.</summary>
/// <param name="LastHalfHour">Hands-on work in the half hour before each table, all courses together.</param>
/// <param name="DialChanges">How often the ovens must change their temperature at the least.</param>
/// <param name="Waiting">Minutes of waiting beyond what the food likes, the worse ones counted more.</param>
public sealed record MenuEase(int Late, int LastHalfHour, int DialChanges, int KitchenDay, long Waiting)
{
    const int HalfHour = 30;

    public static MenuEase Of(Meal meal, Plan plan)
    {
        var measures = new PlanMeasures(meal, plan);
        return new MenuEase(plan.Cost.LateMinutes, meal.Courses.Sum(course => measures.HandsOn(course.Id, HalfHour)), measures.DialChanges, measures.KitchenDay, measures.Waiting);
    }

    /// <summary>
    /// Sooner at the table; or as soon, and easier in one thing without being harder in another by more than a little. How much
    /// a cook feels and what trembles from plan to plan are our own trials, no source.
    /// </summary>
    public bool IsEasierThan(MenuEase other) =>
        Late != other.Late ? Late < other.Late
        : (LastHalfHour < other.LastHalfHour - 2 || DialChanges < other.DialChanges || KitchenDay < other.KitchenDay - 5 || Waiting < other.Waiting - 5)
            && LastHalfHour <= other.LastHalfHour + 5 && KitchenDay <= other.KitchenDay + 15 && Waiting <= other.Waiting + 20;
}
