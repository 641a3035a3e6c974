using System.Collections.Immutable;
using System.Diagnostics;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>
/// Why a meal is late or cannot be planned, as the changes that would mend it: each is tried on the meal itself in a short
/// solve, and named with what it gains and for how long it is needed. At most two seconds in all.
/// </summary>
internal static class WhyNot
{
    /// <summary>Dishes tried the day before: those with most work to move.</summary>
    private const int MostAhead = 3;

    /// <summary>Where there is no plan at all something wants a night, mostly; what of this day is not needed is not asked for.</summary>
    private const int ADay = 1440;

    /// <summary>What mends it wholly first, then what asks least of the household, then what gains most.</summary>
    public static ImmutableArray<Conflict> Find(PlanRequest request, Plan plan, CancellationToken stop) =>
    [
        .. Each(request, plan, stop)
            .OrderByDescending(conflict => conflict.GainMinutes is not { } gain || gain >= plan.Cost.LateMinutes)
            .ThenBy(conflict => Trouble(conflict.Change))
            .ThenByDescending(conflict => conflict.GainMinutes ?? int.MaxValue),
    ];

    /// <summary>The changes as they are found.</summary>
    public static IEnumerable<Conflict> Each(PlanRequest request, Plan plan, CancellationToken stop)
    {
        var (asking, meal) = (new Asking(request, plan, stop), request.Meal);
        var changes = Changes(request, plan).ToList();

        // Everything may wait longer: one solve says whether that helps at all, and which dishes use it.
        return plan.Courses.Where(course => course.LateMinutes > 0)
            .Select(course => new Conflict(new PlanChange.ServeLater(course.Course, course.LateMinutes), course.LateMinutes))
            .Concat(changes.Select((change, index) => Helps(meal, change, asking, IsWholeDay(change) ? 2 : changes.Count + 1 - index)).OfType<Conflict>())
            .Concat(LongerWaits(meal, plan, asking));

        // A plan of a day more is found more slowly, and is likelier than all else: it has half of the time.
        bool IsWholeDay(PlanChange change) => change is PlanChange.StartEarlier && plan.Status == PlanStatus.None;
    }

    private static Conflict? Helps(Meal meal, PlanChange change, Asking asking, int solvesToCome)
    {
        var changed = ChangedMeal.Of(meal, change);
        return asking.Try(changed, solvesToCome, isNear: change is not PlanChange.MakeAhead) is { } plan && Told(meal, changed, change, plan) is { } told
            ? new Conflict(told, asking.Gain(plan))
            : null;
    }

    /// <summary>The change for no longer than the plan found needs it; null where that plan does not need it at all.</summary>
    private static PlanChange? Told(Meal meal, Meal changed, PlanChange change, Plan plan) => change switch
    {
        PlanChange.StartEarlier => meal.NotBefore - NeededSpan.From(plan) is > 0 and var minutes ? new PlanChange.StartEarlier(minutes) : null,
        PlanChange.AddHelper => NeededSpan.Of(Nights.Observed(changed), plan, ChangedMeal.NewHelper(meal)) is { } span ? new PlanChange.AddHelper(span.From, span.To) : null,
        PlanChange.AddOven => NeededSpan.Of(plan, ChangedMeal.NewOven(meal)) is { } span ? new PlanChange.AddOven(span) : null,
        _ => change,
    };

    /// <summary>How much is asked of the household, from a word to a dish less.</summary>
    private static int Trouble(PlanChange change) => change switch
    {
        PlanChange.StartEarlier => 0,
        PlanChange.WaitLonger => 1,
        PlanChange.MakeAhead => 2,
        PlanChange.AddHelper => 3,
        PlanChange.AddRings => 4,
        PlanChange.AddOven => 5,
        PlanChange.ServeLater => 6,
        PlanChange.LeaveOut => 7,
        _ => throw new UnreachableException(),
    };

    private static IEnumerable<Conflict> LongerWaits(Meal meal, Plan plan, Asking asking)
    {
        var minutes = Math.Max(15, plan.Cost.LateMinutes);
        var patient = meal.Dishes.Aggregate(meal, (changed, dish) => ChangedMeal.Of(changed, new PlanChange.WaitLonger(dish.Id, minutes)));
        if (asking.Try(patient, solvesToCome: 3, isNear: true) is not { } all)
        {
            yield break;
        }

        var waits = meal.Dishes.Select(dish => (Dish: dish, More: Wait(dish, all) - dish.Holds.Max(hold => hold.Limit)))
            .Where(one => one.More > 0).ToList();
        for (var index = 0; index < waits.Count; index++)
        {
            if (Helps(meal, new PlanChange.WaitLonger(waits[index].Dish.Id, waits[index].More), asking, waits.Count - index) is { } conflict)
            {
                yield return conflict;
            }
        }
    }

    private static int Wait(Dish dish, Plan plan) => plan.TableTime(dish.Course) - dish.Steps.Max(step => plan.Step(step.Id).End);

    private static IEnumerable<PlanChange> Changes(PlanRequest request, Plan plan)
    {
        var meal = request.Meal;
        if (meal.NotBefore is not null)
        {
            yield return new PlanChange.StartEarlier(plan.Status == PlanStatus.None ? ADay : plan.Cost.LateMinutes);
        }

        yield return new PlanChange.AddHelper(plan.NotBefore, plan.Courses.Max(course => course.TableTime));
        if (!meal.Kitchen.Ovens.IsEmpty && meal.Steps.SelectMany(step => step.Ways).Any(way => way.Way.Uses.Oven is not null))
        {
            yield return new PlanChange.AddOven();
        }

        if (meal.Steps.SelectMany(step => step.Ways).Any(way => way.Way.Uses.Rings > 0))
        {
            yield return new PlanChange.AddRings(1);
        }

        if (DaysAhead.EveningBefore(meal, request.Now) is { } evening)
        {
            var dishes =
                from dish in meal.Dishes
                let work = DaysAhead.StepsOf(meal, dish, evening.To).Sum(step => meal.Step(step).Way.Minutes.Likely)
                where work > 0 && work <= evening.To - evening.From
                orderby work descending
                select new PlanChange.MakeAhead(dish.Id, evening.From, evening.To);
            foreach (var ahead in dishes.Take(MostAhead))
            {
                yield return ahead;
            }
        }
    }
}
