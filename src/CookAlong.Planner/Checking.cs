using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>
/// No plan leaves a planner that breaks a rule. One that does is the planner's own mistake, which is no use to the cook: it is
/// discarded like something never found, and the search goes on without it.
/// </summary>
internal static class Checking
{
    /// <summary>Told of each plan that was discarded; the tests fail there. Nobody listens in a kitchen.</summary>
    public static Action<Meal, ImmutableArray<Breach>>? Discarded { get; set; }

    public static bool Holds(Meal meal, Plan plan, SoFar? so, Minute now)
    {
        ImmutableArray<Breach> breaches = [.. PlanCheck.Check(meal, plan).Where(breach => so is null || IsAhead(meal, breach, so, now))];
        if (!breaches.IsEmpty)
        {
            Discarded?.Invoke(meal, breaches);
        }

        return breaches.IsEmpty;
    }

    /// <summary>The plan checked, with each step's slack; null where it breaks a rule.</summary>
    public static Plan? Finished(Meal meal, Plan plan, SoFar? so, Minute now)
    {
        if (!Holds(meal, plan, so, now))
        {
            return null;
        }

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
        // Who cooks on into the night is up.
        var isForced = breach.Rule is RuleId.FixedTimes or RuleId.Nights;
        return !isOfBegun && !isForced && !(breach.At < now);
    }
}
