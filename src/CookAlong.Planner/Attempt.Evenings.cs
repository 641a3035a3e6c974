using CookAlong.Domain;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <content>
/// What is done ahead costs the same whichever hour of the evening it has, so a search leaves it anywhere: raw food lies about, and
/// somebody is up late. Of all plans of that price a cook takes the one whose food stands least and whose evenings are shortest,
/// and where what takes no hands begins no sooner in the morning than it must.
/// </content>
internal sealed partial class Attempt
{
    /// <summary>How many minutes of food that stands a minute of an evening weighs; own choice.</summary>
    private const int EveningMinute = 2;

    /// <summary>Nothing is open but what lies before the day's work.</summary>
    private static readonly TimeSpan TidyTime = TimeSpan.FromMilliseconds(200);

    /// <summary>Of a deterministic limit.</summary>
    private const double TidyShare = 0.05;

    /// <summary>The same plan but for what lies before the day's work with hands; as it is where nothing does, or nothing better is found at once.</summary>
    public Plan Tidied(Plan plan)
    {
        var last = plan.Courses.Max(course => course.TableTime);
        var ahead = StartedBefore(last - Prices.KitchenMost, plan);
        var early = StartedBefore(last - new PlanMeasures(meal, plan).KitchenDay, plan);
        if (early.Count == 0)
        {
            return plan;
        }

        var starts = plan.Steps.ToDictionary(step => step.Step, step => clock.Of(step.Start));
        var model = new MealModel(meal, clock, so, told, PeopleBy.Counts, search.Prices, new Near(starts, 0, early));
        var morning = LinearExpr.Sum(early.Except(ahead).Select(step => model.End - model.Steps[step].Start));
        model.Aim(Standing(model, early) + (Evenings(model, ahead, plan) * EveningMinute) + morning, plan.Cost.Objective + (told?.PriceOf(plan) ?? 0));
        var time = search.Limits.Deterministic is null ? TidyTime : search.Limits.Time;
        return search.Settle(model, time, TidyShare) is { } draft
            && Naming.Of(model, draft, search.Limits, search.Stop) is { } names
            && Finish(model, draft, names, plan.Cost.Objective, bound: 0) is { } tidied
            && tidied.Cost.Objective <= plan.Cost.Objective
            ? tidied with { Gap = plan.Gap, Status = plan.Status }
            : plan;
    }

    private static HashSet<StepId> StartedBefore(Minute at, Plan plan) => [.. plan.Steps.Where(step => step.Start < at).Select(step => step.Step)];

    /// <summary>How long food stands between steps of which one is early, where it is not put away meanwhile.</summary>
    private static LinearExpr Standing(MealModel model, HashSet<StepId> early) => LinearExpr.Sum(
        from step in model.Steps.Values
        from after in step.Step.After
        where after.Most <= StandingOut.PutAway.TotalMinutes && (early.Contains(step.Step.Id) || early.Contains(after.Step))
        select step.Start - model.Steps[after.Step].End);

    /// <summary>From the first that somebody must be there for to the end of the last, day by day.</summary>
    private LinearExpr Evenings(MealModel model, HashSet<StepId> ahead, Plan plan)
    {
        var work = model.Steps.Values.Where(step => ahead.Contains(step.Step.Id) && step.Ways.Any(way => way.Way.Attention != Attention.Unattended));
        return LinearExpr.Sum(work.GroupBy(step => LocalTime.Show(plan.Step(step.Step.Id).Start, meal.TimeZone).Date).Select(evening =>
        {
            var (first, last) = (model.Time(0, model.End, "first of the evening"), model.Time(0, model.End, "last of the evening"));
            foreach (var step in evening)
            {
                model.Cp.Add(first <= step.Start);
                model.Cp.Add(last >= step.End);
            }

            return last - first;
        }));
    }
}
