using System.Diagnostics;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>
/// The one place that puts a broken rule into words, for the plan page and the terminal alike. What would help a meal
/// (a conflict) is said by ConflictWords, beside the plan file that carries the same sentence.
/// </summary>
public static partial class PlanWords
{
    /// <summary>The rule as <see cref="PlanRules"/> lists it.</summary>
    public static string Rule(RuleId rule) => PlanRules.All.Single(one => one.Id == rule).Sentence;

    /// <summary>What of this plan breaks the rule, where and by how much.</summary>
    public static string Facts(Breach breach, Meal meal) => new BreachSentence(breach, meal).Sentence();

    /// <summary>"15:00", with its day where that is not the first table's.</summary>
    public static string Clock(Minute at, Meal meal)
    {
        var local = LocalTime.Show(at, meal.TimeZone);
        var isTableDay = local.Date == LocalTime.Show(meal.FirstTableTime, meal.TimeZone).Date;
        var pass = LocalTime.IsSecondPass(at, meal.TimeZone) ? " (second pass)" : "";
        return local.ToString(isTableDay ? "HH:mm" : "ddd HH:mm", CultureInfo.InvariantCulture) + pass;
    }

    public static string Place(HoldPlace place) => place switch
    {
        HoldPlace.Table => "on the table",
        HoldPlace.Side => "on the side",
        HoldPlace.Covered => "covered",
        HoldPlace.WarmOven => "in the warm oven",
        HoldPlace.Fridge => "in the fridge",
        _ => throw new UnreachableException($"no words for {place}"),
    };

    public static string Status(Plan plan) => plan.Status switch
    {
        PlanStatus.None => "No plan: this meal cannot be cooked in this kitchen at any table time that was tried.",
        PlanStatus.Optimal or PlanStatus.Feasible when plan.Cost.LateMinutes > 0 => $"A plan, but {plan.Cost.LateMinutes} min late.",
        PlanStatus.Optimal => "A plan on time, proven the best.",
        PlanStatus.Feasible => string.Create(CultureInfo.InvariantCulture, $"A plan on time, at most {plan.Gap:0.0%} from the best."),
        _ => throw new UnreachableException($"no words for {plan.Status}"),
    };
}
