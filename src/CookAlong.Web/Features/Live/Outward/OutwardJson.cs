using System.Text.Json.Nodes;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>Calls as the web hook and the message broker get them.</summary>
static class OutwardJson
{
    public static string Of(IReadOnlyList<OutwardCall> calls, DateTimeOffset sentAt) => new JsonObject
    {
        ["format"] = "cookalong-calls/1",
        ["sentAt"] = sentAt.UtcDateTime,
        ["say"] = Say(calls),
        ["calls"] = new JsonArray([.. calls.Select(call => new JsonObject
        {
            ["run"] = call.Run.ToString(),
            ["call"] = call.Call,
            ["priority"] = call.Priority,
            ["text"] = call.Text,
            ["due"] = call.Due.UtcDateTime,
        })]),
    }.ToJsonString();

    /// <summary>One sentence or a few, for a speaker or a lock screen.</summary>
    public static string Say(IReadOnlyList<OutwardCall> calls) => string.Join(". ", calls.Select(call => call.Text));
}
