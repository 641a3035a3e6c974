using System.Collections.Immutable;
using CookAlong.Intake;

namespace CookAlong.Web.Features.Api;

/// <summary>Every way in which the API says no (problem details, RFC 9457). <see cref="Code"/> never changes; programs may go by it.</summary>
/// <param name="Code">The last part of the problem's type, "/api/problems#CODE".</param>
/// <param name="Remedy">What to do, as a sentence.</param>
public sealed record ApiProblem(string Code, int Status, string Title, string Remedy)
{
    public static readonly ApiProblem
        BadRequest = new("bad-request", 400, "The request could not be read", "Compare it with /api/docs: the path, the content type and each field's name and shape."),
        NoToken = new("no-token", 401, "No token came with it, or one that is not good (any more)", "Send the header Authorization: Bearer TOKEN. A host makes tokens on the page /account."),
        NotAllowed = new("scope-missing", 403, "The token is not good for this", "Have a host make a token with the scope that the header WWW-Authenticate names, on the page /account."),
        HttpsOnly = new("https-only", 403, "This server takes that over HTTPS only", "Send it to the address that begins with https://, and make a new token if this one went over plain HTTP."),
        NotFound = new("not-found", 404, "There is no such thing here", "List what there is first: GET /api/v1/meals, GET /api/v1/runs."),
        NoPlan = new("no-plan", 409, "The meal has no plan to cook by", "Ask for one: POST /api/v1/meals/{meal}/plan. One that was made before the meal was changed does not count."),
        Refused = new("refused", 409, "The kitchen does not take that", "Read the detail, look at the board again, and send what fits it with a new commandId."),
        ListRefused = new("list-refused", 409, "The shopping list does not take that", "Read the detail, and send what fits the list with a new commandId."),
        Changed = new("meal-changed", 412, "The meal has been changed since", "Get it again, make your change on that, and send its ETag in If-Match."),
        TooLarge = new("too-large", 413, "That is too large", $"Send at most {Security.RequestSize.Largest / 1024 / 1024} MB."),
        NotJson = new("not-json", 415, "That is not JSON", "Send the header Content-Type: application/json."),
        BadFile = new("bad-file", 422, "The meal file has errors; nothing was kept", "Mend what 'errors' names, each by its place (a JSON Pointer, RFC 6901)."),
        BadCommand = new("bad-command", 422, "That is no command", "Send one of those in the section 'Commands' of DEVELOPERS.md, with all of its fields."),
        NoVersion = new("version-required", 428, "It is not said which version is to be replaced", "Get the meal, and send its ETag in If-Match (RFC 6585, 3)."),
        TooMany = new("too-many", 429, "Too many requests", "Wait as many seconds as the header Retry-After says."),
        Broken = new("server-error", 500, "Something went wrong on the server", "It is in the server's log. Try again in a moment; a repeated command with the same commandId does no harm."),
        Other = new("other", 400, "That cannot be done", "Compare the request with /api/docs: the method and the path.");

    /// <summary>All, for the page that a problem's type leads to.</summary>
    public static IReadOnlyList<ApiProblem> All { get; } =
        [BadRequest, NoToken, NotAllowed, HttpsOnly, NotFound, NoPlan, Refused, ListRefused, Changed, TooLarge, NotJson, BadFile, BadCommand, NoVersion, TooMany, Broken, Other];

    /// <summary>For an answer that has a status and no words yet.</summary>
    public static ApiProblem Of(int status) => status >= 500 ? Broken with { Status = status } : status switch
    {
        400 => BadRequest,
        401 => NoToken,
        403 => NotAllowed,
        404 => NotFound,
        413 => TooLarge,
        415 => NotJson,
        429 => TooMany,
        _ => Other with { Status = status },
    };

    /// <param name="detail">What it was this time, as a sentence; null = the title says it.</param>
    public IResult Answer(string? detail = null, ImmutableArray<FileError>? errors = null, long? sequence = null)
    {
        var more = new Dictionary<string, object?> { ["remedy"] = Remedy };
        if (errors is { } found)
        {
            more["errors"] = found.Select(error => new { pointer = error.Place, detail = error.Problem, remedy = error.Remedy });
        }

        if (sequence is { } last)
        {
            more["sequence"] = last;
        }

        return new InWords(detail, Status, Title, $"{ApiFeature.Problems}#{Code}", more);
    }

    /// <summary>The type is a whole address below the path that may stand before all of them, which only the request knows.</summary>
    sealed record InWords(string? Detail, int Status, string Title, string Type, IDictionary<string, object?> More) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.Headers.CacheControl = "no-store";
            return Results.Problem(Detail, instance: null, Status, Title, httpContext.Request.PathBase + Type, More).ExecuteAsync(httpContext);
        }
    }
}
