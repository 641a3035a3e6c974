using System.Text.Json;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Wording;

namespace CookAlong.Web.Features.Live.Line;

// What goes between a screen and the server, as JSON in camel case; instants are milliseconds since the Unix epoch.

/// <param name="CommandId">The screen's own; the same tap sent again carries the same.</param>
/// <param name="Saw">The sequence the screen showed. The run itself judges what is still possible; this is for the log.</param>
public sealed record TapRequest(Guid RunId, Guid CommandId, long Saw, JsonElement Command);

/// <param name="Sequence">The run's, after the tap.</param>
/// <param name="Reason">Why nothing changed, as a sentence; null when accepted.</param>
public sealed record TapAnswer(bool Accepted, long Sequence, string? Reason);

/// <param name="EverybodyUtc">From when it rings on every screen if nobody has answered it; null = never.</param>
public sealed record WireCall(string CallId, long DueUtc, string Kind, string Priority, string Text, string? Step, long? EverybodyUtc, bool Acknowledged, long Sequence);

public sealed record Entered(long Sequence, long ServerNow, IReadOnlyList<WireCall> Calls, Guid Person, string Role);

public sealed record EnteredShopping(long ServerNow);

/// <param name="Offer">The plan on offer, so that a new one makes screens look again; so do the next two.</param>
/// <param name="Screens">Which screens are here and armed.</param>
/// <param name="Unanswered">How many calls ring everywhere by now.</param>
public sealed record ChangedNews(long Sequence, IReadOnlyList<WireCall> Calls, Guid? Offer, string Screens, int Unanswered);

public sealed record CallNews(string CallId);

static class Wire
{
    public static IReadOnlyList<WireCall> Calls(Run run, Board board)
    {
        var words = new Words(run.Meal, board.People);
        return
        [
            .. board.Calls.Select(call => new WireCall(
                call.Id.Value,
                call.Due.ToUnixTimeMilliseconds(),
                Name(call.Kind),
                Name(call.Priority),
                words.Of(call),
                call.Step?.Value,
                call.Priority == CallPriority.Low ? null : (call.Due + Escalation.ToEverybodyAfter).ToUnixTimeMilliseconds(),
                call.IsAcknowledged,
                run.Sequence)),
        ];
    }

    /// <summary>Calls that nobody has answered for so long that they ring on every screen.</summary>
    public static int Unanswered(Board board) => board.Calls.Count(call => Escalation.ReachOf(call, board.At) > CallReach.Concerned);

    public static string Name<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}
