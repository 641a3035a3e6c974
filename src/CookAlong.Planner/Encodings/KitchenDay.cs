using CookAlong.Domain;
using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>
/// The price of the kitchen day, and what so many hands can do in so long. The latter follows from the rules for people, but the
/// solver proves little of it by itself: it makes the bound of the day, and of what a calm last half hour adds to it.
/// </summary>
internal sealed class KitchenDay
{
    private readonly MealModel model;

    /// <summary>The first minute of work with hands that is not done ahead.</summary>
    private readonly IntVar first;

    /// <summary>Minutes of a pair of hands, of steps that have one way only; none of what is done ahead.</summary>
    private readonly List<(CourseId Course, LinearExpr Minutes)> work = [];

    /// <summary>Of these the minutes that cannot be done ahead.</summary>
    private readonly Dictionary<CourseId, int> onTheDay = [];

    /// <summary>Nought while a meal runs: what has begun may have taken more hands than there are now.</summary>
    private readonly int hands;

    private KitchenDay(MealModel model)
    {
        this.model = model;
        first = model.Cp.NewIntVar(-DoneAhead.Reach(model), model.End, "first hands");
        hands = model.So is null ? model.Jobs.SelectMany(job => job.Able).Distinct().Count() : 0;
    }

    /// <summary>Null without work for hands.</summary>
    public static KitchenDay? Of(MealModel model, DoneAhead ahead)
    {
        var handsOn = model.Steps.Values
            .SelectMany(step => step.Ways.Where(way => way.Way.Attention == Attention.HandsOn).Select(way => (Step: step, Way: way)))
            .ToList();
        if (handsOn.Count == 0)
        {
            return null;
        }

        var day = new KitchenDay(model);
        model.Cp.Add(day.first <= ahead.LastTable);
        foreach (var (step, way) in handsOn)
        {
            day.Begin(step, way, ahead);
        }

        model.Charge(ahead.LastTable - day.first, model.Prices.KitchenMinute);
        if (day.hands > 0)
        {
            model.Cp.Add((ahead.LastTable - day.first) * day.hands >= LinearExpr.Sum(day.work.Select(one => one.Minutes)));
        }

        return day;
    }

    /// <summary>What of a course is not done in its last minutes takes the hands there are so long before those.</summary>
    /// <param name="done">All its hands' minutes within so many before its table time, the longest first.</param>
    public void AddLeast(Course course, IReadOnlyList<(int Minutes, LinearExpr Work)> done)
    {
        if (hands == 0)
        {
            return;
        }

        var table = model.Tables[course.Id];
        var all = LinearExpr.Sum(work.Where(one => one.Course == course.Id).Select(one => one.Minutes));
        foreach (var (minutes, within) in done.Where(one => onTheDay.GetValueOrDefault(course.Id) >= one.Minutes * hands))
        {
            model.Cp.Add((table - minutes - first) * hands >= all - within);
        }

        foreach (var ((minutes, within), (fewer, less)) in done.Zip(done.Skip(1)))
        {
            model.Cp.Add(less >= within - ((minutes - fewer) * hands));
        }
    }

    private void Begin(StepVariables step, WayVariables way, DoneAhead ahead)
    {
        var (course, minutes) = (step.Dish.Course, step.Ways.Length == 1 ? way.Minutes * way.Way.People : 0);
        if (ahead.Of(step) is not { } isAhead)
        {
            model.Cp.Add(first <= step.Start).OnlyEnforceIf(way.Taken);
            work.Add((course, LinearExpr.Constant(minutes)));
            onTheDay[course] = onTheDay.GetValueOrDefault(course) + minutes;
            return;
        }

        model.Cp.Add(first <= step.Start).OnlyEnforceIf([way.Taken, isAhead.Not()]);
        work.Add((course, (1 - isAhead) * minutes));
    }
}
