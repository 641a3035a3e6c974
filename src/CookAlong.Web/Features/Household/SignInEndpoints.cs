using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Audit;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace CookAlong.Web.Features.Household;

static class SignInEndpoints
{
    public const string ReturnParameter = "returnUrl";

    public static void MapSignIn(this WebApplication app)
    {
        app.MapGet("/sign-in", async (HttpContext http, Accounts accounts, [FromQuery(Name = ReturnParameter)] string? back, CancellationToken stop) =>
            !await accounts.AnyAsync(stop) ? Page(back, message: HouseholdWords.NoHostYet)
            : Visitor.Of(http.User) is { IsHost: true } && back is not null ? Page(back, http.User.Identity!.Name, HouseholdWords.OnceMore)
            : Page(back));
        app.MapPost("/sign-in", SignInAsync).WithMetadata(HouseholdFeature.FormLimit);

        // The form binding makes antiforgery look at it: signing somebody out from another site is a nuisance worth refusing.
        app.MapPost("/sign-out", async (HttpContext http, Sessions sessions, AuditLog audit, [FromForm] string? _) =>
        {
            if (Visitor.Of(http.User) is not null)
            {
                await audit.WriteAsync(http, AuditDeed.SignedOut);
            }

            await sessions.EndAsync(http);

            // What the live pages keep on the device (keep.js) goes with who looked at it.
            http.Response.Headers["Clear-Site-Data"] = "\"storage\"";
            return Results.Redirect("/sign-in");
        });
    }

    static async Task<IResult> SignInAsync(
        HttpContext http,
        Accounts accounts,
        Sessions sessions,
        WrongTries tries,
        AuditLog audit,
        ILogger<Accounts> log,
        [FromForm] string? name,
        [FromForm] string? password,
        [FromForm(Name = ReturnParameter)] string? back)
    {
        name ??= "";
        string[] keys = [$"host {name.Trim().ToUpperInvariant()}", $"address {HouseholdFeature.AddressOf(http)}"];
        if (tries.Wait(keys) is var wait && wait > TimeSpan.Zero)
        {
            return Page(back, name, HouseholdWords.TooManyTries(wait), StatusCodes.Status429TooManyRequests);
        }

        if (password is null or { Length: > Passwords.Most } || await accounts.FindAsync(name, password, http.RequestAborted) is not { } host)
        {
            tries.Wrong(keys);
            // The name is not logged: people type passwords into the wrong field.
            log.LogWarning("A sign-in from {Address} was refused.", HouseholdFeature.AddressOf(http));
            await audit.WriteAsync(AuditDeed.SignInRefused, who: null, HouseholdFeature.AddressOf(http), "with a password");
            return Page(back, name, HouseholdWords.WrongNameOrPassword, StatusCodes.Status401Unauthorized);
        }

        tries.Right(keys);
        await sessions.BeginHostAsync(http, host);
        await audit.WriteAsync(AuditDeed.SignedIn, host.Name, HouseholdFeature.AddressOf(http), "with a password");
        log.LogInformation("{Host} signed in.", host.Id);
        return Results.Redirect(RedirectHttpResult.IsLocalUrl(back) ? back! : "/");
    }

    static RazorComponentResult<SignInPage> Page(string? back, string? name = null, string? message = null, int status = StatusCodes.Status200OK) =>
        new(new Dictionary<string, object?>
        {
            [nameof(SignInPage.Name)] = name,
            [nameof(SignInPage.Message)] = message,
            [nameof(SignInPage.ReturnUrl)] = RedirectHttpResult.IsLocalUrl(back) ? back : null,
        })
        {
            StatusCode = status,
        };
}
