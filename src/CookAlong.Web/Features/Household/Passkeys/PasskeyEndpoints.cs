using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Audit;
using Fido2NetLib;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Household.Passkeys;

/// <summary>What the page's script (js/passkeys.js) asks and answers, as JSON. A refusal is a sentence under "message".</summary>
static class PasskeyEndpoints
{
    public static void MapPasskeySignIn(this WebApplication app)
    {
        app.MapPost("/sign-in/passkey/question", async (HttpContext http, PasskeyBook passkeys) =>
            PasskeyPlace.Of(http.Request) is { } place ? Results.Text(await passkeys.AskToSignInAsync(place), "application/json") : No(PasskeyWords.NoName))
            .WithMetadata(HouseholdFeature.FormLimit);
        app.MapPost("/sign-in/passkey", SignInAsync).WithMetadata(HouseholdFeature.FormLimit);
    }

    public static void MapPasskeyAdding(this RouteGroupBuilder account)
    {
        account.MapPost("/passkeys/question", async (HttpContext http, PasskeyBook passkeys) =>
        {
            var visitor = Visitor.Of(http.User)!;
            return PasskeyPlace.Of(http.Request) is { } place
                ? Results.Text(await passkeys.AskForNewAsync(place, visitor.Person.Value, http.User.Identity!.Name!, visitor.Session), "application/json")
                : No(PasskeyWords.NoName);
        });
        account.MapPost("/passkeys", AddAsync);
    }

    static async Task<IResult> AddAsync(HttpContext http, PasskeyBook passkeys, AuditLog audit, NewPasskey made, CancellationToken stop)
    {
        var visitor = Visitor.Of(http.User)!;
        if (made is not { Name: not null, Credential: { RawId: not null, Response: { ClientDataJson: not null, AttestationObject: not null } } })
        {
            return Results.BadRequest();
        }

        if (PasskeyPlace.Of(http.Request) is not { } place)
        {
            return No(PasskeyWords.NoName);
        }

        var answer = await passkeys.AddAsync(place, visitor.Person.Value, visitor.Session, made.Name, made.Credential, stop);
        if (answer != PasskeyAnswer.Good)
        {
            return No(PasskeyWords.Of(answer));
        }

        await audit.WriteAsync(http, AuditDeed.PasskeyAdded, made.Name.Trim());
        return Results.Ok();
    }

    static async Task<IResult> SignInAsync(HttpContext http, PasskeyBook passkeys, Sessions sessions, WrongTries tries, AuditLog audit, PasskeySignIn signIn, CancellationToken stop)
    {
        if (signIn is not { Credential: { RawId: not null, Response: { ClientDataJson: not null, AuthenticatorData: not null, Signature: not null } } })
        {
            return Results.BadRequest();
        }

        var address = HouseholdFeature.AddressOf(http);
        string[] keys = [$"passkey {Convert.ToBase64String(signIn.Credential.RawId)}", $"address {address}"];
        if (tries.Wait(keys) is var wait && wait > TimeSpan.Zero)
        {
            return No(HouseholdWords.TooManyTries(wait), StatusCodes.Status429TooManyRequests);
        }

        if (PasskeyPlace.Of(http.Request) is not { } place || await passkeys.FindAsync(place, signIn.Credential, stop) is not { } host)
        {
            tries.Wrong(keys);
            await audit.WriteAsync(AuditDeed.SignInRefused, who: null, address, "with a passkey");
            return No(PasskeyWords.NotKnown, StatusCodes.Status401Unauthorized);
        }

        tries.Right(keys);
        await sessions.BeginHostAsync(http, host);
        await audit.WriteAsync(AuditDeed.SignedIn, host.Name, address, "with a passkey");
        return Results.Ok(new { goTo = Under(http.Request.PathBase, RedirectHttpResult.IsLocalUrl(signIn.ReturnUrl) ? signIn.ReturnUrl! : "/") });
    }

    /// <summary>A script is given whole addresses: with the path that a proxy has this server under.</summary>
    static string Under(PathString under, string path) => under.HasValue && !path.StartsWith($"{under}/", StringComparison.OrdinalIgnoreCase) ? under + path : path;

    static IResult No(string message, int status = StatusCodes.Status400BadRequest) => Results.Json(new { message }, statusCode: status);
}

/// <param name="Credential">As W3C, Web Authentication Level 3, 5.1.8 writes it as JSON.</param>
sealed record NewPasskey(string Name, AuthenticatorAttestationRawResponse Credential);

/// <param name="ReturnUrl">Where to go afterwards, a path on this server.</param>
sealed record PasskeySignIn(string? ReturnUrl, AuthenticatorAssertionRawResponse Credential);
