using CookAlong.Domain;
using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>The prices of <see cref="Prices"/> that no rule's encoding charges itself.</summary>
internal static class Objective
{
    public static void Add(MealModel model)
    {
        AddKitchenMinutes(model);
        var crowds = model.Prices.Crowds.GroupBy(crowd => crowd.Minutes).ToList();
        foreach (var course in model.Meal.Courses)
        {
            AddRush(model, course, crowds);
        }

        foreach (var step in model.Steps.Values)
        {
            var table = model.Tables[step.Dish.Course];
            AddAhead(model, step, table);
            if (!step.HasBegun && model.Told is { } told && told.Step(step.Step.Id) is { } was)
            {
                AddMoved(model, step, model.Clock.Of(told.Carried(step.Dish, was.Start)), told.MovedMinute);
            }
        }
    }

    private static void AddKitchenMinutes(MealModel model)
    {
        var handsOn = model.Steps.Values
            .SelectMany(step => step.Ways.Where(way => way.Way.Attention == Attention.HandsOn).Select(way => (Step: step, Way: way)))
            .ToList();
        if (handsOn.Count == 0)
        {
            return;
        }

        var last = LastTable(model);
        var first = model.Cp.NewIntVar(-Reach(model), model.End, "first hands");
        model.Cp.Add(first <= last);
        List<LinearExpr> work = [];
        foreach (var (step, way) in handsOn)
        {
            var amount = step.Ways.Length == 1 ? way.Minutes * way.Way.People : 0;
            if (model.End + Reach(model) <= Prices.KitchenMost)
            {
                model.Cp.Add(first <= step.Start).OnlyEnforceIf(way.Taken);
                work.Add(LinearExpr.Constant(amount));
                continue;
            }

            var isAhead = model.Cp.NewBoolVar("ahead of the day");
            model.Cp.Add(step.Start < last - Prices.KitchenMost).OnlyEnforceIf(isAhead);
            model.Cp.Add(first <= step.Start).OnlyEnforceIf([way.Taken, isAhead.Not()]);
            work.Add((1 - isAhead) * amount);
        }

        model.Charge(last - first, model.Prices.KitchenMinute);
        AddLeastDay(model, last - first, work);
    }

    /// <summary>
    /// The day is as long as its work with hands takes the hands there are. Follows from the rules for people, but the solver proves
    /// little of it by itself: it is what makes the bound of a single cook's day.
    /// </summary>
    /// <param name="work">Minutes of a pair of hands, of steps that have one way only.</param>
    private static void AddLeastDay(MealModel model, LinearExpr day, List<LinearExpr> work)
    {
        var hands = model.Jobs.SelectMany(job => job.Able).Distinct().Count();
        if (model.So is null && hands > 0)
        {
            model.Cp.Add(day * hands >= LinearExpr.Sum(work));
        }
    }

    private static LinearExpr LastTable(MealModel model)
    {
        if (model.Tables.Count == 1)
        {
            return model.Tables.Values.Single();
        }

        var last = model.Cp.NewIntVar(-Reach(model), model.End, "last table");
        model.Cp.AddMaxEquality(last, model.Tables.Values);
        return last;
    }

    private static void AddAhead(MealModel model, StepVariables step, LinearExpr table)
    {
        AddUpTo(model, table - step.Start - Prices.AheadMinutes, Prices.AheadMost, Prices.AheadMinute, step.Step.Id);
    }

    /// <summary>Charges for each minute above nought, and for no more than <paramref name="most"/> of them.</summary>
    private static void AddUpTo(MealModel model, LinearExpr minutes, int most, int price, StepId step)
    {
        var counted = model.Cp.NewIntVar(0, most, $"{step} ahead");
        model.Charge(counted, price, step);
        if (model.End + Reach(model) <= most)
        {
            model.Cp.Add(counted >= minutes);
            return;
        }

        var isBeyond = model.Cp.NewBoolVar($"{step} far ahead");
        model.Cp.Add(counted >= minutes).OnlyEnforceIf(isBeyond.Not());
        model.Cp.Add(counted >= most).OnlyEnforceIf(isBeyond);
    }

    /// <summary>Hands-on minutes within so many before the table, each priced, and those beyond what the hands there do at ease.</summary>
    private static void AddRush(MealModel model, Course course, IEnumerable<IGrouping<int, Crowd>> crowds)
    {
        var work = model.Steps.Values.Where(step => step.Dish.Course == course.Id)
            .SelectMany(step => step.Ways.Where(way => way.Way.Attention == Attention.HandsOn).Select(way => (Step: step, Way: way)))
            .ToList();
        foreach (var crowd in crowds)
        {
            var minutes = work.Select(one => WithinLast(model, one.Step, one.Way, crowd.Key)).ToList();
            var people = work.Select(one => (long)one.Way.Way.People).ToList();
            var all = LinearExpr.WeightedSum(minutes, people);
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

    private static void AddMoved(MealModel model, StepVariables step, int told, int price)
    {
        var moved = model.Cp.NewIntVar(0, model.End + Math.Abs(told), $"{step.Step.Id} moved");
        model.Cp.Add(moved >= step.Start - told);
        model.Cp.Add(moved >= told - step.Start);
        model.Charge(moved, price);
    }

    /// <summary>How far before the clock's first minute something that has begun may lie.</summary>
    private static int Reach(MealModel model) =>
        model.So is null ? 0 : model.So.Facts.Select(fact => Math.Max(0, -model.Clock.Of(fact.Start))).Append(0).Max();
}
