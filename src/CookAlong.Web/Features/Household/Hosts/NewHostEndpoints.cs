using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Audit;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace CookAlong.Web.Features.Household.Hosts;

/// <summary>The door for whoever a host has invited to be one too.</summary>
static class NewHostEndpoints
{
    public static void MapNewHost(this WebApplication app)
    {
        app.MapGet("/new-host", () => Page());
        app.MapPost("/new-host", CreateAsync).WithMetadata(HouseholdFeature.FormLimit);
    }

    static async Task<IResult> CreateAsync(
        HttpContext http, HostInvitations invitations, Accounts accounts, Sessions sessions, AuditLog audit, [FromForm] string? secret, [FromForm] string? name, [FromForm] string? password)
    {
        if (await invitations.TakeAsync(secret?.Trim() ?? "") is not { } invitation)
        {
            await audit.WriteAsync(AuditDeed.SignInRefused, who: null, HouseholdFeature.AddressOf(http), "with an invitation");
            return Page(name, secret, HouseholdWords.InvitationGone, StatusCodes.Status403Forbidden);
        }

        var (host, fault) = await accounts.CreateAsync(name ?? "", password ?? "", http.RequestAborted);
        if (host is null)
        {
            await invitations.PutBackAsync(invitation);
            return Page(name, secret, HouseholdWords.Of(fault!), StatusCodes.Status400BadRequest);
        }

        await sessions.BeginHostAsync(http, host);
        await audit.WriteAsync(AuditDeed.HostAdded, host.Name, HouseholdFeature.AddressOf(http));
        return Results.Redirect("/meals");
    }

    static RazorComponentResult<NewHostPage> Page(string? name = null, string? secret = null, string? message = null, int status = StatusCodes.Status200OK) =>
        new(new Dictionary<string, object?>
        {
            [nameof(NewHostPage.Name)] = name,
            [nameof(NewHostPage.Secret)] = secret,
            [nameof(NewHostPage.Message)] = message,
        })
        {
            StatusCode = status,
        };
}
