using CookAlong.Web.Data;
using CookAlong.Web.Features.Api.Tokens;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Household.Hosts;
using CookAlong.Web.Features.Household.Passkeys;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace CookAlong.Web.Features.Household.Account;

/// <summary>A host's own page: password, passkeys, where they are signed in, who else is a host. Plain forms, one for each deed.</summary>
static class AccountEndpoints
{
    public static void MapAccount(this WebApplication app)
    {
        var account = app.MapGroup("/account").RequireAuthorization(HouseholdFeature.HostPolicy);
        account.MapGet("", async (HttpContext http, AccountViews views, string? done) => Page(await views.OfAsync(http) with { Done = AccountWords.Done(done) }));
        account.MapAudit();

        var deeds = account.MapGroup("");
        deeds.AddEndpointFilter(OnlyFreshAsync);
        deeds.MapPost("/password", ChangePasswordAsync);
        deeds.MapPasskeyAdding();
        deeds.MapPost("/passkeys/remove", async (HttpContext http, PasskeyBook passkeys, AuditLog audit, [FromForm] Guid id) =>
        {
            if (await passkeys.RemoveAsync(Visitor.Of(http.User)!.Person.Value, id) is { } name)
            {
                await audit.WriteAsync(http, AuditDeed.PasskeyRemoved, name);
            }

            return Back(AccountWords.PasskeyRemoved);
        });
        deeds.MapPost("/sessions/end", async (HttpContext http, Sessions sessions, AuditLog audit, [FromForm] Guid id) =>
        {
            var visitor = Visitor.Of(http.User)!;
            var device = (await sessions.OfAsync(visitor.Person)).SingleOrDefault(one => one.Id == id)?.Device;
            if (await sessions.EndAsync(visitor.Person, id))
            {
                await audit.WriteAsync(http, AuditDeed.SessionEnded, device);
            }

            return Back(AccountWords.SessionEnded);
        });
        deeds.MapPost("/sessions/end-others", async (HttpContext http, Sessions sessions, AuditLog audit, [FromForm] string? _) =>
        {
            if (await sessions.EndOthersAsync(Visitor.Of(http.User)!) is > 0 and var count)
            {
                await audit.WriteAsync(http, AuditDeed.SessionEnded, AccountWords.Others(count));
            }

            return Back(AccountWords.OthersEnded);
        });
        deeds.MapPost("/hosts/invite", async (HttpContext http, HostInvitations invitations, AccountViews views, AuditLog audit, [FromForm] string? _) =>
        {
            var secret = await invitations.InviteAsync(Visitor.Of(http.User)!.Person.Value);
            await audit.WriteAsync(http, AuditDeed.HostInvited);
            return Page(await views.OfAsync(http) with { Invitation = $"{http.Request.Scheme}://{http.Request.Host}{http.Request.PathBase}/new-host#{secret}" });
        });
        deeds.MapPost("/hosts/remove", RemoveHostAsync);
        deeds.MapPost("/tokens", MakeTokenAsync);
        deeds.MapPost("/tokens/revoke", async (HttpContext http, ApiTokens tokens, AuditLog audit, [FromForm] Guid id) =>
        {
            if (await tokens.RevokeAsync(Visitor.Of(http.User)!.Person.Value, id) is { } name)
            {
                await audit.WriteAsync(http, AuditDeed.TokenRevoked, name);
            }

            return Back(AccountWords.TokenRevoked);
        });
    }

    /// <summary>A tablet stays signed in for months, and anybody may walk up to it: what opens the house is changed only by who has just said who they are.</summary>
    static async ValueTask<object?> OnlyFreshAsync(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        var http = call.HttpContext;
        var sessions = http.RequestServices.GetRequiredService<Sessions>();
        return await sessions.IsFreshAsync(Visitor.Of(http.User)!, http.RequestAborted) ? await next(call)
            : http.Request.HasFormContentType ? Results.Redirect(AccountWords.SignInAgain)
            : Results.Json(new { message = HouseholdWords.OnceMore }, statusCode: StatusCodes.Status403Forbidden);
    }

    static async Task<IResult> ChangePasswordAsync(
        HttpContext http, Accounts accounts, Sessions sessions, WrongTries tries, AccountViews views, AuditLog audit, [FromForm] string? current, [FromForm] string? next)
    {
        var name = http.User.Identity!.Name!;
        string[] keys = [$"host {name.ToUpperInvariant()}", $"address {HouseholdFeature.AddressOf(http)}"];
        if (tries.Wait(keys) is var wait && wait > TimeSpan.Zero)
        {
            return Page(await views.OfAsync(http) with { Message = HouseholdWords.TooManyTries(wait) }, StatusCodes.Status429TooManyRequests);
        }

        var fault = current is null or { Length: > Passwords.Most } ? new AccountFault.WrongPassword() : await accounts.ChangePasswordAsync(name, current, next ?? "", http.RequestAborted);
        if (fault is not null)
        {
            if (fault is AccountFault.WrongPassword)
            {
                tries.Wrong(keys);
                await audit.WriteAsync(http, AuditDeed.PasswordChangeRefused);
            }

            return Page(await views.OfAsync(http) with { Message = HouseholdWords.Of(fault) }, StatusCodes.Status400BadRequest);
        }

        tries.Right(keys);
        // Whoever knew the old one is out (OWASP ASVS 5.0.0, 7.4.3).
        await sessions.EndOthersAsync(Visitor.Of(http.User)!);
        await audit.WriteAsync(http, AuditDeed.PasswordChanged);
        return Back(AccountWords.PasswordChanged);
    }

    static async Task<IResult> RemoveHostAsync(HttpContext http, Accounts accounts, Sessions sessions, AccountViews views, AuditLog audit, [FromForm] Guid id)
    {
        var name = (await accounts.AllAsync(http.RequestAborted)).SingleOrDefault(host => host.Id == id)?.Name;
        if (name is null)
        {
            return Back(AccountWords.HostRemoved);
        }

        if (!await accounts.RemoveAsync(id, http.RequestAborted))
        {
            return Page(await views.OfAsync(http) with { Message = AccountWords.LastHost }, StatusCodes.Status409Conflict);
        }

        await audit.WriteAsync(http, AuditDeed.HostRemoved, name);
        await sessions.EndOfAsync(new(id), run: null);
        return Back(AccountWords.HostRemoved);
    }

    static async Task<IResult> MakeTokenAsync(HttpContext http, ApiTokens tokens, AccountViews views, AuditLog audit, IFormCollection form)
    {
        var (name, scopes) = (form["name"].ToString(), form["scope"].OfType<string>().ToArray());
        var (token, fault) = await tokens.MakeAsync(Visitor.Of(http.User)!.Person.Value, name, scopes);
        if (token is null)
        {
            return Page(await views.OfAsync(http) with { Message = fault }, StatusCodes.Status400BadRequest);
        }

        await audit.WriteAsync(http, AuditDeed.TokenMade, $"{name.Trim()}: {string.Join(' ', scopes)}");
        return Page(await views.OfAsync(http) with { Token = token });
    }

    static RedirectHttpResult Back(string done) => TypedResults.Redirect($"/account?done={done}");

    static RazorComponentResult<AccountPage> Page(AccountView view, int status = StatusCodes.Status200OK) => new(new { View = view }) { StatusCode = status };
}
