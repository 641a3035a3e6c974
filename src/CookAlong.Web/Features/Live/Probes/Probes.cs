using System.Globalization;
using System.Text;
using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Quantities;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Live.Wording;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Live.Probes;

/// <summary>Readings that a thermometer posts by itself: {"celsius": 61.5}, {"fahrenheit": 143} or the number alone, in °C.</summary>
static class Probes
{
    /// <summary>Bytes of a reading.</summary>
    const int Longest = 1024;

    /// <summary>Of its own: a thermometer that chatters must not keep its house from signing in.</summary>
    static readonly AddressLimit limit = new("probe", AMinute: 60);

    /// <summary>A joint changes slowly: what comes sooner after the last reading is heard but not noted, unless it is warm enough to be done.</summary>
    static readonly TimeSpan apart = TimeSpan.FromMinutes(2);

    public static void AddProbes(this IServiceCollection services)
    {
        services.AddSingleton<ProbeAddresses>();
    }

    public static void MapProbes(this WebApplication app)
    {
        app.MapPost("/probe/{token}", ReadAsync).WithMetadata(limit).DisableAntiforgery();
        app.MapGet("/cook/{run:guid}/thermometer/{step}", PageAsync).RequireAuthorization(HouseholdFeature.HostPolicy);
    }

    static async Task<IResult> PageAsync(HttpContext http, Guid run, string step, LiveViews views, ProbeAddresses addresses) =>
        await views.OfAsync(new RunId(run), http.User) is { } view && view.Meal.Steps.FirstOrDefault(one => one.Id.Value == step && one.Core is not null) is { } wanted
            ? new RazorComponentResult<ProbePage>(new
            {
                View = view,
                Step = wanted,
                Address = $"{http.Request.Scheme}://{http.Request.Host}{http.Request.PathBase}{addresses.Of(view.Run, wanted.Id, view.Person)}",
            })
            : Results.NotFound();

    static async Task<IResult> ReadAsync(HttpContext http, string token, ProbeAddresses addresses, LiveRuns runs, RunClocks clocks, Boards boards, TimeProvider time)
    {
        if (addresses.Read(token) is not var (id, step, by) || await runs.FindAsync(id) is not { } live)
        {
            return Results.NotFound();
        }

        if (await CelsiusAsync(http) is not { } celsius)
        {
            return Results.BadRequest(new { reason = "Post {\"celsius\": 61.5}, {\"fahrenheit\": 143} or the number alone, in °C." });
        }

        var run = live.Current;
        if (IsTooSoon(run, step, celsius, clocks.Now(id)))
        {
            return Results.Ok(new { noted = false, reason = "The last reading is less than two minutes old." });
        }

        var decision = await live.SendAsync(new Tap(new CommandId(Guid.CreateVersion7(time.GetUtcNow())), by, new RunCommand.ReadCore(step, celsius)));
        return decision is Decision.Refused refused
            ? Results.Json(new { noted = false, reason = new Words(run.Meal, boards.Of(run).People).Of(refused.Why) }, statusCode: StatusCodes.Status409Conflict)
            : Results.Ok(new { noted = true });
    }

    static bool IsTooSoon(Run run, StepId step, decimal celsius, DateTimeOffset now) =>
        run.StateOf(step) is var state && state.Readings.LastOrDefault() is { } last && now - last.At < apart
        && run.Meal.Steps.FirstOrDefault(one => one.Id == step)?.Core is { } core && (celsius < core.Celsius || state.Word?.Verdict == CoreVerdict.Reached);

    static async Task<decimal?> CelsiusAsync(HttpContext http)
    {
        var buffer = new byte[Longest + 1];
        var length = await http.Request.Body.ReadAtLeastAsync(buffer, buffer.Length, throwOnEndOfStream: false, http.RequestAborted);
        return length > Longest ? null : Celsius(Encoding.UTF8.GetString(buffer, 0, length));
    }

    static decimal? Celsius(string text)
    {
        if (decimal.TryParse(text.Trim(), NumberStyles.Number & ~NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out var plain))
        {
            return plain;
        }

        try
        {
            using var json = JsonDocument.Parse(text);
            return json.RootElement.ValueKind != JsonValueKind.Object ? null
                : Number(json.RootElement, "celsius") ?? (Number(json.RootElement, "fahrenheit") is { } fahrenheit and > -1000 and < 10_000 ? Math.Round((decimal)OvenScale.Celsius((double)fahrenheit), 2) : null);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    static decimal? Number(JsonElement json, string name) =>
        json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number && value.TryGetDecimal(out var number) ? number : null;
}
