using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Live.Wording;

// What a new plan means to people, before it is taken and after.
public sealed partial class Words
{
    public static string Offer(OfferedPlan offer) => offer.LateMinutes == 0
        ? "The new plan serves on time."
        : $"The new plan serves {Minutes(offer.LateMinutes)} late at the most.";

    public const string Drop = "What nobody has begun is cancelled. What of it cooks comes off the heat now: see to it yourself.";

    public const string Wished = "The plan does not know of what has just happened.";

    public static string Wish(OfferedPlan? offer) => offer is null ? "A new plan is being looked for." : "A new plan is ready.";

    /// <summary>When new plans are taken without asking, as the host chose it.</summary>
    public static string Rule(int? minutes) => minutes switch
    {
        null => "the host takes each new plan",
        0 => "new plans are taken by themselves when nobody’s next step moves",
        { } farthest => $"new plans are taken by themselves when nobody’s next step moves by more than {Minutes(farthest)}",
    };

    public static string ChooseRule(int? minutes) => minutes is { } farthest ? $"By itself up to {farthest} min" : "Ask me each time";

    /// <summary>How a table time is to be moved.</summary>
    public static string MoveTable(int minutes) => minutes < 0 ? $"{-minutes} min sooner" : $"{minutes} min later";

    /// <summary>One step of an offered plan: who is told something new.</summary>
    public string Change(StepChange change) =>
        $"{Hands(change)}{Step(change.Step)} at {clock.Show(change.Becomes)}{(IsMoved(change) ? $", not {clock.Show(change.Was)}" : "")}";

    /// <summary>One step of a plan that was taken, as the whole kitchen reads it.</summary>
    public string Taken(StepChange change) => $"{Hands(change)}{Step(change.Step)} {NowAt(change)}";

    /// <summary>The same for somebody it was, or becomes, a step of.</summary>
    public string Taken(StepChange change, HelperId me, bool isNext) =>
        !change.BecomesBy.Contains(me) ? $"Not yours any more: {Step(change.Step)}{(change.BecomesBy.IsEmpty ? "" : $"; {Names(change.BecomesBy)} will do it")}"
        : $"{(isNext ? "Your next step" : change.WasBy.Contains(me) ? "Yours" : "New for you")}: {Step(change.Step)} {NowAt(change)}";

    string NowAt(StepChange change) => IsMoved(change)
        ? $"now at {clock.Show(change.Becomes)} (was {clock.Show(change.Was)})"
        : $"at {clock.Show(change.Becomes)}, as before";

    string Hands(StepChange change) =>
        !change.WasBy.IsEmpty && !change.BecomesBy.ToHashSet().SetEquals(change.WasBy) ? $"{Names(change.BecomesBy)} instead of {Names(change.WasBy)}: "
        : change.BecomesBy.IsEmpty ? ""
        : $"{Names(change.BecomesBy)}: ";

    static bool IsMoved(StepChange change) => change.Becomes != change.Was;
}
