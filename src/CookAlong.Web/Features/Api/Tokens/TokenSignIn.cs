using System.Security.Claims;
using System.Text.Encodings.Web;
using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace CookAlong.Web.Features.Api.Tokens;

/// <summary>
/// Lets a program in by the header "Authorization: Bearer TOKEN" (RFC 6750, 2.1), and by nothing else: an address ends up in logs, and a
/// cookie is sent along by whatever page makes a browser ask. It is asked by the API's endpoints alone, so a token opens no page.
/// </summary>
sealed class TokenSignIn(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, ApiTokens tokens)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Name = "token";
    public const string ScopeClaim = "scope";

    const string Prefix = "Bearer ";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase))
        {
            return AuthenticateResult.NoResult();
        }

        if (await tokens.FindAsync(header[Prefix.Length..].Trim(), Context.RequestAborted) is not var (row, host))
        {
            return AuthenticateResult.Fail("There is no such token.");
        }

        var identity = new ClaimsIdentity(
            [
                new(Visitor.SessionClaim, row.Id.ToString()),
                new(ClaimTypes.NameIdentifier, row.Host.ToString()),
                new(ClaimTypes.Role, Visitor.HostRole),
                new(ClaimTypes.Name, host),
                .. row.Scopes.Split(' ').Select(scope => new Claim(ScopeClaim, scope)),
            ],
            Name);
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), Name));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        Response.Headers[HeaderNames.WWWAuthenticate] = Request.Headers.Authorization.Count > 0 ? "Bearer error=\"invalid_token\"" : "Bearer";
        return Task.CompletedTask;
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = StatusCodes.Status403Forbidden;
        Response.Headers[HeaderNames.WWWAuthenticate] = $"Bearer error=\"insufficient_scope\", scope=\"{Context.GetEndpoint()?.Metadata.GetMetadata<NeedsScope>()?.Scope}\"";
        return Task.CompletedTask;
    }
}

/// <summary>The scope that an endpoint asks for.</summary>
sealed record NeedsScope(string Scope);
