using CookAlong.Domain.Meals;
using static CookAlong.Domain.Planning.Checks.PlanInQuestion;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>Table times, and how the dishes wait for them.</summary>
static class TableChecks
{
    public static IEnumerable<Breach> TableTime(PlanInQuestion question)
    {
        var (meal, courses) = (question.Meal, Given(question.Plan.Courses));
        foreach (var course in meal.Courses)
        {
            var planned = courses.Where(one => one.Course == course.Id).ToArray();
            if (planned.Length != 1)
            {
                yield return new(RuleId.TableTime, Course: course.Id, Thing: "course", Found: planned.Length, Allowed: 1);
                continue;
            }

            if (planned[0].TableTime < course.TableTime)
            {
                yield return new(RuleId.TableTime, Course: course.Id, Thing: "early", At: planned[0].TableTime,
                    Found: planned[0].TableTime - course.TableTime, Allowed: 0);
            }

            if (planned[0].Promised != course.TableTime)
            {
                yield return new(RuleId.TableTime, Course: course.Id, Thing: "promised", At: planned[0].Promised,
                    Found: planned[0].Promised - course.TableTime, Allowed: 0);
            }
        }

        foreach (var unknown in courses.Where(one => meal.Courses.All(course => course.Id != one.Course)))
        {
            yield return new(RuleId.TableTime, Course: unknown.Course, Thing: "course", At: unknown.TableTime, Found: 1, Allowed: 0);
        }

        // A warm oven's end is its own rule.
        foreach (var hold in Given(question.Plan.Holds).Where(hold => hold.Place != HoldPlace.WarmOven))
        {
            if (question.Dish(hold.Dish) is { } dish && question.TableTime(dish) is { } table && hold.To != table)
            {
                yield return new(RuleId.TableTime, Dish: dish.Id, Course: dish.Course, Thing: "hold", At: hold.To, Found: hold.To - table, Allowed: 0);
            }
        }
    }

    public static IEnumerable<Breach> HoldLimits(PlanInQuestion question)
    {
        var holds = Given(question.Plan.Holds);
        foreach (var dish in question.Meal.Dishes)
        {
            var planned = holds.Where(hold => hold.Dish == dish.Id).ToArray();
            if (planned.Length != 1)
            {
                yield return new(RuleId.HoldLimits, Dish: dish.Id, Thing: "hold", Found: planned.Length, Allowed: 1);
                continue;
            }

            foreach (var breach in HoldLimits(question, dish, planned[0]))
            {
                yield return breach;
            }
        }

        foreach (var unknown in holds.Where(hold => question.Dish(hold.Dish) is null))
        {
            yield return new(RuleId.HoldLimits, Dish: unknown.Dish, Thing: "hold", At: unknown.From, Found: 1, Allowed: 0);
        }
    }

    static IEnumerable<Breach> HoldLimits(PlanInQuestion question, Dish dish, PlannedHold planned)
    {
        if (planned.Hold < 0 || planned.Hold >= dish.Holds.Length || dish.Holds[planned.Hold].Place != planned.Place)
        {
            yield return new(RuleId.HoldLimits, Dish: dish.Id, Thing: "place", At: planned.From, Found: planned.Hold, Allowed: dish.Holds.Length - 1);
            yield break;
        }

        if (question.LastEnd(dish) is not { } end || question.TableTime(dish) is not { } table)
        {
            yield break;
        }

        var hold = dish.Holds[planned.Hold];
        var wait = table - end;
        if (wait < hold.Least)
        {
            yield return new(RuleId.HoldLimits, Dish: dish.Id, Thing: "least", At: end, Found: wait, Allowed: hold.Least);
        }
        else if (wait > hold.Limit)
        {
            yield return new(RuleId.HoldLimits, Dish: dish.Id, Thing: "limit", At: end, Found: wait, Allowed: hold.Limit);
        }

        if (hold.Place != HoldPlace.WarmOven && planned.From != end)
        {
            yield return new(RuleId.HoldLimits, Dish: dish.Id, Thing: "from", At: planned.From, Found: planned.From - end, Allowed: 0);
        }
    }

    public static IEnumerable<Breach> WarmHold(PlanInQuestion question)
    {
        foreach (var (planned, dish, warm) in question.WarmWaits)
        {
            if (question.Oven(planned.Oven) is null)
            {
                yield return new(RuleId.WarmHold, Dish: dish.Id, Oven: planned.Oven, Thing: "oven", At: planned.From);
            }

            if (question.LastEnd(dish) is { } end)
            {
                var stood = planned.From - end;
                if (stood < 0 || stood > warm.StandFirst)
                {
                    yield return new(RuleId.WarmHold, Dish: dish.Id, Oven: planned.Oven, Thing: "standFirst", At: planned.From, Found: stood, Allowed: warm.StandFirst);
                }
            }

            if (question.TableTime(dish) is { } table && planned.To != table)
            {
                yield return new(RuleId.WarmHold, Dish: dish.Id, Oven: planned.Oven, Thing: "to", At: planned.To, Found: planned.To - table, Allowed: 0);
            }
        }
    }
}
