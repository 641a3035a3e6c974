using System.Collections.Immutable;

namespace CookAlong.Domain.Planning;

/// <summary>
/// THE list of what any plan must satisfy. <see cref="PlanCheck"/> checks it, the planner encodes it, the plan file's
/// documentation repeats it; a rule that is not here does not exist.
/// </summary>
public static class PlanRules
{
    public static ImmutableArray<PlanRule> All { get; } =
    [
        new(RuleId.EveryStepOnce, "Every step of the meal is planned exactly once."),
        new(RuleId.StepLength, "A step takes the likely minutes of the way chosen for it, one of the ways its file offers."),
        new(RuleId.NotBefore, "Nothing starts before the meal's first minute."),
        new(RuleId.Gaps, "A step starts no sooner and no later after the steps it waits for than the gaps allow."),
        new(RuleId.FixedTimes, "A step with a fixed start or a window keeps it."),
        new(RuleId.HostsChoice, "A step the host gave to somebody, or chose an option for, stays so."),
        new(RuleId.TableTime, "A course is served all at once, never before its promised table time."),
        new(RuleId.HoldLimits, "A dish waits for the table in one of its holds, within the hold's least and limit."),
        new(RuleId.WarmHold, "A dish kept in a warm oven goes in before it has stood out too long, and stays until the table."),
        new(RuleId.OvenTemperature, "An oven's temperature is inside the range of everything in it, at every minute."),
        new(RuleId.OvenRates, "An oven heats and cools no faster than it can, from its starting temperature on."),
        new(RuleId.OvenLimits, "With something inside, an oven stays between its lowest and highest temperature."),
        new(RuleId.Places, "A step has the oven, the grill and the appliances it takes, those it asks for where it asks, and no others."),
        new(RuleId.Shelves, "An oven never holds more than it has shelves."),
        new(RuleId.Rings, "Never more rings than the kitchen has."),
        new(RuleId.Grills, "A grill does one thing at a time; a grill inside an oven and that oven exclude each other."),
        new(RuleId.Appliances, "Never more of an appliance than the kitchen has."),
        new(RuleId.OneJobEach, "Nobody is in two hands-on steps or tends at once."),
        new(RuleId.EnoughHands, "A hands-on step has as many different helpers as it takes; other steps have none."),
        new(RuleId.Availability, "A helper is in the kitchen for the whole of every job."),
        new(RuleId.Nights, "In the nights before the day of the meal, outside of the kitchen's waking hours (07:00 to 22:00 unless it has others), nobody works or is called to be near, except in hours of their own or beside a step with a fixed start."),
        new(RuleId.Skills, "A helper has the skills a job needs."),
        new(RuleId.Children, "A child is given only child-safe work."),
        new(RuleId.Nearby, "While a step needs somebody nearby, an adult is in the kitchen throughout."),
        new(RuleId.Tends, "Every tend is done once, inside its step, close enough to its time, for its minutes."),
    ];
}

public enum RuleId
{
    EveryStepOnce, StepLength, NotBefore, Gaps, FixedTimes, HostsChoice, TableTime, HoldLimits, WarmHold,
    OvenTemperature, OvenRates, OvenLimits, Places, Shelves, Rings, Grills, Appliances,
    OneJobEach, EnoughHands, Availability, Nights, Skills, Children, Nearby, Tends,
}

/// <param name="Sentence">The rule in the cook's words.</param>
public sealed record PlanRule(RuleId Id, string Sentence);
