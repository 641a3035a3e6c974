using System.Diagnostics;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Live.Wording;

public sealed partial class Words
{
    public static string Headline(BoardCard card) => card.Tend is { } tend ? tend.Text : card.Step.Text;

    /// <summary>The small line under a headline: how to do it, or for a tend whose food it is.</summary>
    public static string? How(BoardCard card) => card.Tend is null ? card.Step.How : card.Dish.Name;

    /// <summary>Whose it is, where no shape and name can be shown.</summary>
    public string Who(BoardCard card) =>
        card.Helpers.Length > 0 ? Names(card.Helpers)
        : card.IsFree ? "free to take"
        : card.Attention == Attention.HandsOn || card.Tend is not null || card.Call is not null || card.State == CardState.Over ? "whoever is near"
        : "looks after itself";

    /// <summary>Whose a free job is all the same: who has it with room for one more, and for whom it was planned who has not joined.</summary>
    public string? PlannedFor(BoardCard card)
    {
        var (here, absent) = (card.Helpers.Where(HasJoined).ToList(), card.Helpers.Where(helper => !HasJoined(helper)).ToList());
        var with = here.Count == 0 ? null : $"with {Names(here)}";
        var planned = absent.Count == 0 ? null : $"planned for {Names(absent)}, who has not joined";
        return with is null ? planned : planned is null ? with : $"{with}, {planned}";
    }

    bool HasJoined(HelperId helper) => !people.IsDefault && people.Any(one => one.Helper == helper && one.Person is not null);

    /// <summary>What stands beside the countdown.</summary>
    public string Beside(BoardCard card) => card.State switch
    {
        CardState.Running => $"left of {WallClock.Length(card.Ends - card.Starts)}",
        CardState.Over => "over",
        CardState.Due => "late; not begun",
        CardState.Waiting => $"until {At(card.Starts)}",
        CardState.Done => $"done at {At(card.Ends)}",
        _ => throw new UnreachableException($"A card's state without words: {card.State}."),
    };

    public static string Of(HoldPlace place) => place switch
    {
        HoldPlace.Table => "on the table",
        HoldPlace.Side => "on the side",
        HoldPlace.Covered => "covered",
        HoldPlace.WarmOven => "in the warm oven",
        HoldPlace.Fridge => "in the fridge",
        _ => throw new UnreachableException($"A place to wait without words: {place}."),
    };

    public string Waiting(BoardWaiting one) => $"{Of(one.Place)} since {At(one.Since)}, {Until(one.Limit)}";

    /// <summary>A limit that food sets; the clock only reminds.</summary>
    string Until(Minute limit) => $"at the longest until {clock.Show(limit)}";

    /// <summary>Time in hand, never told larger than it is: "9 min", "2 h 5 min", "23 h", "3 days".</summary>
    public static string Room(int minutes) =>
        minutes < RoundHoursFrom ? WallClock.Length(TimeSpan.FromMinutes(minutes))
        : minutes < DaysFrom ? $"{minutes / 60} h"
        : $"{minutes / (24 * 60)} days";

    /// <summary>Nobody counts the minutes of half a day, nor the hours of two; in minutes.</summary>
    const int RoundHoursFrom = 10 * 60, DaysFrom = 2 * 24 * 60;

    public static string BreathingRoom(Board board) =>
        board.BreathingRoom > 0 ? "of breathing room" : board.Slip is null ? "No breathing room" : "Table time has slipped";

    /// <summary>One line across the room: that nobody hears calls, else how much time there is.</summary>
    public static string OnTheWall(LiveView view) =>
        !view.Screens.IsAnyArmed ? "Nobody hears calls"
        : view.IsAllDone ? "All done"
        : view.Board.BreathingRoom > 0 ? $"{Room(view.Board.BreathingRoom)} spare"
        : view.Board.Slip is { } slip ? Late(slip)
        : "No time to spare";

    public static string Late(BoardSlip slip) => $"{WallClock.Length(TimeSpan.FromMinutes(slip.LateMinutes))} late";

    /// <summary>What the slip costs.</summary>
    public string Slip(Board board)
    {
        var late = board.Courses.Where(course => course.Expected > course.Promised).ToList();
        return late.Count == 0
            ? $"The table waits {Minutes(board.Slip!.LateMinutes)}."
            : $"{And([.. late.Select(course => $"{course.Name} at {clock.Show(course.Expected)} instead of {clock.Show(course.Promised)}")])}.";
    }

    public string Causes(BoardSlip slip) =>
        slip.Causes.IsEmpty ? "" : $"Behind: {And([.. slip.Causes.Take(3).Select(Step)])}.";

    public string Pause(BoardPause pause) => pause.After is { } step
        ? $"Everyone waits after {Step(step)} until the host says go on."
        : "Nothing new starts until the host says go on; what cooks goes on cooking.";

    /// <summary>"Yours", or whose a job is for a while yet.</summary>
    public string Held(BoardCard card, HelperId? me) =>
        me is { } mine && card.Helpers.Contains(mine) ? "Yours" : $"Stays with {Names(card.Helpers)}";

    /// <summary>A tend of a step that was late, or not done at all: "Baste: skipped".</summary>
    public string Of(TendNote note) =>
        $"{meal.Step(note.Turn.Step).Tends[note.Turn.Tend].Text}: {(note.IsSkipped ? "skipped" : $"{note.LateMinutes} min late")}";

    /// <summary>What sets a person apart today; null for a grown-up who is here.</summary>
    /// <param name="silentSince">Since when nothing is heard of their phone; null while it is.</param>
    public string? Aside(BoardPerson person, DateTimeOffset? silentSince) =>
        person.IsHereNow && silentSince is { } since ? $"phone silent since {At(since)}" : Aside(person);

    public string? Aside(BoardPerson person) =>
        person.HereFrom is { } from && !person.IsHereNow ? $"here from {clock.Show(from)}"
        : !person.IsHereNow ? "not here now"
        : person.IsChild ? "child-safe"
        : null;
}
