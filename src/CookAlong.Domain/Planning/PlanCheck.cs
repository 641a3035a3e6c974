using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning.Checks;

namespace CookAlong.Domain.Planning;

/// <summary>Holds any plan against every rule of <see cref="PlanRules"/>. Shares no code with the planners.</summary>
public static class PlanCheck
{
    static readonly ImmutableArray<(RuleId Rule, Func<PlanInQuestion, IEnumerable<Breach>> Breaches)> Checks =
    [
        (RuleId.EveryStepOnce, StepChecks.EveryStepOnce),
        (RuleId.StepLength, StepChecks.StepLength),
        (RuleId.NotBefore, StepChecks.NotBefore),
        (RuleId.Gaps, StepChecks.Gaps),
        (RuleId.FixedTimes, StepChecks.FixedTimes),
        (RuleId.HostsChoice, StepChecks.HostsChoice),
        (RuleId.TableTime, TableChecks.TableTime),
        (RuleId.HoldLimits, TableChecks.HoldLimits),
        (RuleId.WarmHold, TableChecks.WarmHold),
        (RuleId.OvenTemperature, OvenChecks.OvenTemperature),
        (RuleId.OvenRates, OvenChecks.OvenRates),
        (RuleId.OvenLimits, OvenChecks.OvenLimits),
        (RuleId.Places, PlaceChecks.Places),
        (RuleId.Shelves, PlaceChecks.Shelves),
        (RuleId.Rings, PlaceChecks.Rings),
        (RuleId.Grills, PlaceChecks.Grills),
        (RuleId.Appliances, PlaceChecks.Appliances),
        (RuleId.OneJobEach, PeopleChecks.OneJobEach),
        (RuleId.EnoughHands, PeopleChecks.EnoughHands),
        (RuleId.Availability, PeopleChecks.Availability),
        (RuleId.Nights, PeopleChecks.Nights),
        (RuleId.Skills, PeopleChecks.Skills),
        (RuleId.Children, PeopleChecks.Children),
        (RuleId.Nearby, PeopleChecks.Nearby),
        (RuleId.Tends, TendChecks.Tends),
    ];

    /// <summary>The rules that have a check; a rule without one would be a promise nobody keeps.</summary>
    public static IEnumerable<RuleId> Checked => Checks.Select(check => check.Rule);

    /// <summary>Every rule broken, each place once; empty when the plan holds. Ids the meal does not know are breaches too.</summary>
    public static ImmutableArray<Breach> Check(Meal meal, Plan plan)
    {
        var question = new PlanInQuestion(meal, plan);
        return [.. Checks.SelectMany(check => check.Breaches(question))];
    }
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
