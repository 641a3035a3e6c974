using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>Holds any plan against every rule of <see cref="PlanRules"/>. Shares no code with the planners.</summary>
public static class PlanCheck
{
    /// <summary>Every rule broken, each place once; empty when the plan holds.</summary>
    public static ImmutableArray<Breach> Check(Meal meal, Plan plan) => throw new NotImplementedException();
}

/// <summary>A rule broken at a place, with the facts of it. The sentence is made at the edge.</summary>
/// <param name="At">The minute it first shows.</param>
/// <param name="Found">What the plan has, in the unit of the rule (minutes, °C, shelves, ...).</param>
/// <param name="Allowed">What the rule allows.</param>
public sealed record Breach(
    RuleId Rule,
    StepId? Step = null,
    StepId? Other = null,
    DishId? Dish = null,
    CourseId? Course = null,
    HelperId? Helper = null,
    OvenId? Oven = null,
    string? Thing = null,
    Minute? At = null,
    int? Found = null,
    int? Allowed = null);
