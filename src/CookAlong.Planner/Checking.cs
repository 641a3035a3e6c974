using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>No plan leaves the planner that breaks a rule: that would be the planner's own mistake.</summary>
internal static class Checking
{
    public static void Hold(Meal meal, Plan plan, SoFar? so, Minute now)
    {
        var breaches = PlanCheck.Check(meal, plan).Where(breach => so is null || IsAhead(meal, breach, so, now)).ToList();
        if (breaches.Count > 0)
        {
            throw new InvalidOperationException($"The planner broke its own rules: {string.Join("; ", breaches)}");
        }
    }

    /// <summary>The plan checked, with each step's slack.</summary>
    public static Plan Finished(Meal meal, Plan plan, SoFar? so, Minute now)
    {
        Hold(meal, plan, so, now);
        var slack = so is null ? Slack.Of(meal, plan) : Retiming.MoveRight(meal, plan, [.. so.Facts], now).Slack;
        return plan with { Steps = [.. plan.Steps.Select(step => step with { Slack = slack.GetValueOrDefault(step.Step) })] };
    }

    /// <summary>Concerns only what has not begun. What has, and what it forces on others, is as the kitchen made it.</summary>
    private static bool IsAhead(Meal meal, Breach breach, SoFar so, Minute now)
    {
        var begun = so.Facts.Select(fact => fact.Step).ToHashSet();
        var isOfBegun = (breach.Step is { } step && begun.Contains(step))
            || (breach.Other is { } other && begun.Contains(other))
            || (breach.Dish is { } id && meal.Dishes.Single(dish => dish.Id == id).Steps.All(one => begun.Contains(one.Id)));
        var isForced = breach.Rule == RuleId.FixedTimes;
        return !isOfBegun && !isForced && !(breach.At < now);
    }
}
