using CookAlong.Domain;
using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>The prices of <see cref="Prices"/> that no rule's encoding charges itself.</summary>
internal static class Objective
{
    public static void Add(MealModel model)
    {
        var ahead = new DoneAhead(model);
        var day = KitchenDay.Of(model, ahead);
        var crowds = model.Prices.Crowds.GroupBy(crowd => crowd.Minutes).OrderByDescending(crowd => crowd.Key).ToList();
        foreach (var course in model.Meal.Courses)
        {
            AddRush(model, course, crowds, day);
        }

        foreach (var step in model.Steps.Values)
        {
            if (!step.HasBegun && model.Told is { } told && told.Step(step.Step.Id) is { } was)
            {
                AddMoved(model, step, model.Clock.Of(told.Carried(step.Dish, was.Start)), told.Price);
            }
        }
    }

    /// <summary>Hands-on minutes within so many before the table, each priced, and those beyond what the hands there do at ease.</summary>
    private static void AddRush(MealModel model, Course course, IEnumerable<IGrouping<int, Crowd>> crowds, KitchenDay? day)
    {
        var work = model.Steps.Values.Where(step => step.Dish.Course == course.Id)
            .SelectMany(step => step.Ways.Where(way => way.Way.Attention == Attention.HandsOn).Select(way => (Step: step, Way: way)))
            .ToList();
        var done = new List<(int Minutes, LinearExpr Work)>();
        foreach (var crowd in crowds)
        {
            var minutes = work.Select(one => WithinLast(model, one.Step, one.Way, crowd.Key)).ToList();
            var people = work.Select(one => (long)one.Way.Way.People).ToList();
            var all = LinearExpr.WeightedSum(minutes, people);
            done.Add((crowd.Key, all));
            if (crowd.Key == Prices.RushMinutes)
            {
                model.Charge(all, model.Prices.RushMinute);
            }

            foreach (var limit in crowd)
            {
                var most = work.Sum(one => Math.Min(one.Way.Minutes, crowd.Key) * one.Way.Way.People);
                var over = model.Cp.NewIntVar(0, most, $"{course.Id} crowded in the last {crowd.Key}");
                model.Cp.Add(over >= all - limit.Hands(model.Meal, course));
                model.Charge(over, limit.Price);
            }
        }

        day?.AddLeast(course, done);
    }

    private static IntVar WithinLast(MealModel model, StepVariables step, WayVariables way, int minutes)
    {
        var table = model.Tables[step.Dish.Course];
        var within = model.Cp.NewIntVar(0, way.Minutes, $"{step.Step.Id} in the last {minutes}");
        var into = step.Start + way.Minutes - table + minutes;
        if (way.Minutes >= minutes && !step.HasBegun)
        {
            // No step ends after its table, so no more than the last minutes of it can count.
            model.Cp.Add(within >= into).OnlyEnforceIf(way.Taken);
        }
        else
        {
            var wholly = model.Cp.NewBoolVar($"{step.Step.Id} wholly in the last {minutes}");
            model.Cp.Add(within >= way.Minutes).OnlyEnforceIf([wholly, way.Taken]);
            model.Cp.Add(within >= into).OnlyEnforceIf([wholly.Not(), way.Taken]);
        }

        return within;
    }

    /// <summary>Each minute of it has a price, up to the most that is charged: beyond that it is moved by far.</summary>
    private static void AddMoved(MealModel model, StepVariables step, int told, MovePrice price)
    {
        var reach = model.End + Math.Abs(told);
        var moved = model.Cp.NewIntVar(0, Math.Min(reach, price.Most), $"{step.Step.Id} moved");
        Constraint[] least = [model.Cp.Add(moved >= step.Start - told), model.Cp.Add(moved >= told - step.Start)];
        if (reach > price.Most)
        {
            var isFar = model.Cp.NewBoolVar($"{step.Step.Id} moved by far");
            model.Cp.Add(moved >= price.Most).OnlyEnforceIf(isFar);
            Array.ForEach(least, one => one.OnlyEnforceIf(isFar.Not()));
        }

        model.Charge(moved, price.Minute);
    }
}
