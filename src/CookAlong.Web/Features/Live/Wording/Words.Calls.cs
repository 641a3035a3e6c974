using System.Diagnostics;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Features.Live.Wording;

public sealed partial class Words
{
    /// <summary>The call as one sentence, as it is shown on a ringing device and read aloud.</summary>
    public string Of(Call call) => call.Kind switch
    {
        CallKind.Begin or CallKind.Over or CallKind.In or CallKind.Out or CallKind.Tend => $"{Kind(call)}: {Headline(call)}",
        CallKind.Dial or CallKind.Pause or CallKind.Table or CallKind.Cools => Headline(call),
        _ => throw Unknown(call),
    };

    /// <summary>What to do about it, as a card's headline.</summary>
    public string Headline(Call call) => call.Kind switch
    {
        CallKind.In or CallKind.Out or CallKind.Begin or CallKind.Over => Called(call).Text,
        CallKind.Tend => $"{call.Tend!.Text} ({DishName(call)})",
        CallKind.Dial => call.Dial is { Celsius: > 0 } dial ? $"Turn {OvenName(call)} to {dial.Celsius} °C{PlaceNames.OnDial(meal.Kitchen.Ovens.Single(oven => oven.Id == call.Oven), dial.Celsius)}" : $"Turn {OvenName(call)} off",
        CallKind.Cools => $"{DishName(call)} cools as it rests: serve it, or keep it hot",
        CallKind.Pause => "Pause here until everyone is ready",
        CallKind.Table => $"{CourseName(call)}: to the table in 10 minutes",
        _ => throw Unknown(call),
    };

    /// <summary>What kind of call it is, in two or three words.</summary>
    public string Kind(Call call) => call.Kind switch
    {
        CallKind.In => InOrOut(call, "Tray in", "Under the grill", "On the heat", "Start"),
        CallKind.Out => InOrOut(call, "Tray out", "Out of the grill", "Off the heat", "Ready"),
        CallKind.Tend => "Tend",
        CallKind.Dial => "Oven dial",
        CallKind.Begin => "Begin",
        CallKind.Over => "Running over",
        CallKind.Cools => "Cooling",
        CallKind.Pause => "Pause",
        CallKind.Table => "Table",
        _ => throw Unknown(call),
    };

    public static string NobodyArmed => "No screen in this kitchen can be heard. Arm this one, or another: calls would come in silence.";

    /// <summary>Stands beside the shape, so that nobody has to know colours.</summary>
    public static string Of(CallPriority priority) => priority switch
    {
        CallPriority.High => "Urgent",
        CallPriority.Medium => "Due",
        CallPriority.Low => "Note",
        _ => throw new UnreachableException($"A call priority without a word: {priority}."),
    };

    /// <summary>The line above a called job: how urgent, what kind, and whether it has gone unheard.</summary>
    public string Heading(Call call, DateTimeOffset now) =>
        $"{Of(call.Priority)}: {Kind(call).ToLowerInvariant()}{(Escalation.ReachOf(call, now) > CallReach.Concerned ? ", unanswered" : "")}";

    /// <summary>A kind of call without its meal, as the list of hazards names it.</summary>
    public static string Of(Hazard hazard) => hazard.Kind switch
    {
        CallKind.In => "Tray in, pan on.",
        CallKind.Out => "Tray out, pan off.",
        CallKind.Tend => "Baste, turn, stir.",
        CallKind.Dial => "Turn the oven’s dial.",
        CallKind.Begin => "A job begins.",
        CallKind.Over => hazard.IsOnHeat == true ? "Still on the heat." : "A job runs over.",
        CallKind.Cools => "A roast has rested long enough.",
        CallKind.Pause => "Pause here.",
        CallKind.Table => "Ten minutes to the table.",
        _ => throw new UnreachableException($"A kind of call without words: {hazard.Kind}."),
    };

    /// <summary>What a screen says of itself.</summary>
    public static string Of(ScreenState screen) =>
        $"{(screen.IsBoard ? "the board" : "their jobs")}: {(screen.IsArmed ? "armed" : "silent")}{(screen.IsAwake ? ", stays awake" : "")}";

    public static string OfWay(string way) => way == "mqtt" ? "Message broker" : "Web hook";

    /// <summary>How it went with a receiver beyond the page.</summary>
    public string Of(WayState state) => state switch
    {
        { Failure: { } why, Reached: { } reached } => $"not reached; the last time it was, at {At(reached)}. {why}",
        { Failure: { } why } => $"not reached. {why}",
        { Reached: { } reached } => $"reached at {At(reached)}",
        _ => "not tried since the server started",
    };

    string InOrOut(Call call, string oven, string grill, string ring, string other)
    {
        // Any way of doing the step names the same kind of place often enough for a word; the card itself says which.
        var ways = Called(call).Ways.Select(one => one.Way.Uses).ToList();
        return ways.Any(uses => uses.Oven is not null) ? oven
            : ways.Any(uses => uses.Grill is not null) ? grill
            : ways.Any(uses => uses.Rings > 0) ? ring
            : other;
    }

    Step Called(Call call) => meal.Step(call.Step!.Value);

    string DishName(Call call) => meal.DishOf(call.Step!.Value).Name;

    string OvenName(Call call) => meal.Kitchen.Ovens.Length == 1 ? "the oven" : meal.Kitchen.Ovens.Single(oven => oven.Id == call.Oven).Name;

    string CourseName(Call call) => meal.Courses.Single(course => course.Id == call.Course).Name;

    static UnreachableException Unknown(Call call) => new($"A call without words: {call.Kind}.");
}
