using System.Text.Json;
using CookAlong.Domain.Quantities;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Api;

/// <summary>A core temperature; exactly one of <paramref name="Celsius"/> and <paramref name="Fahrenheit"/> is given.</summary>
/// <param name="Step">The step that waits for the thermometer: a card's core.step.</param>
/// <param name="AtUtc">When it was read, milliseconds since the Unix epoch; null = now.</param>
/// <param name="CommandId">The same sent again is noted once; null = every request is a reading of its own.</param>
public sealed record ReadingRequest(string Step, decimal? Celsius, decimal? Fahrenheit, long? AtUtc, Guid? CommandId);

/// <summary>Readings alone, for a thermometer that is trusted with nothing else.</summary>
static class ReadingApi
{
    /// <summary>What no kitchen's thermometer shows, so that a unit's slip does not overflow.</summary>
    const decimal Hottest = 1000;

    public static void MapReadingApi(this RouteGroupBuilder run) => run.MapPost("/readings", NoteAsync).WithTags("Readings")
        .Needs(ApiScope.Readings).WithSummary("Note a reading of a joint's core temperature").Produces<TapAnswer>();

    static async Task<IResult> NoteAsync(HttpContext http, Guid run, ReadingRequest reading, LiveRuns runs, IncomingTaps taps, TimeProvider time)
    {
        decimal? celsius = reading switch
        {
            { Celsius: { } given and > -Hottest and < Hottest, Fahrenheit: null } => given,
            { Fahrenheit: { } given and > -Hottest and < Hottest, Celsius: null } => Math.Round((decimal)OvenScale.Celsius((double)given), 2),
            _ => null,
        };
        if (celsius is null)
        {
            return ApiProblem.BadRequest.Answer("Give one of celsius and fahrenheit, as a number.");
        }

        var command = JsonSerializer.SerializeToElement(new { kind = "readCore", step = reading.Step, celsius, at = reading.AtUtc });
        return await RunApi.AnswerAsync(http, new RunId(run), new TapRequest(run, reading.CommandId ?? Guid.CreateVersion7(time.GetUtcNow()), Saw: 0, command), runs, taps);
    }
}
