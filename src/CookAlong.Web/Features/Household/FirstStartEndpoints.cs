using CookAlong.Web.Data;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Meals;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace CookAlong.Web.Features.Household;

static class FirstStartEndpoints
{
    public static void MapFirstStart(this WebApplication app)
    {
        app.MapGet("/first-start", IResult (FirstStart firstStart) => firstStart.IsOpen ? Page() : Results.Redirect("/sign-in"));
        app.MapPost("/first-start", CreateAsync).WithMetadata(HouseholdFeature.FormLimit);
    }

    static async Task<IResult> CreateAsync(
        HttpContext http,
        FirstStart firstStart,
        Accounts accounts,
        Sessions sessions,
        DemoMeals demo,
        EarlierMeals earlier,
        DemoDishes dishes,
        AuditLog audit,
        ILogger<FirstStart> log,
        [FromForm] string? secret,
        [FromForm] string? name,
        [FromForm] string? password)
    {
        if (!firstStart.IsOpen)
        {
            return Results.Redirect("/sign-in");
        }

        // 128 bits need no back-off: the rate limit of the form is more than enough.
        if (!firstStart.Take(secret?.Trim() ?? ""))
        {
            log.LogWarning("A first start from {Address} had the wrong secret.", HouseholdFeature.AddressOf(http));
            return Page(name, secret, new AccountFault.WrongSecret(), StatusCodes.Status403Forbidden);
        }

        var (host, fault) = await accounts.CreateAsync(name ?? "", password ?? "", http.RequestAborted);
        if (host is null)
        {
            firstStart.PutBack(secret!.Trim());
            return Page(name, secret, fault, StatusCodes.Status400BadRequest);
        }

        await demo.AddAsync(http.RequestAborted);
        await earlier.AddAsync(http.RequestAborted);
        await dishes.AddAsync(http.RequestAborted);
        await sessions.BeginHostAsync(http, host);
        await audit.WriteAsync(AuditDeed.HostAdded, host.Name, HouseholdFeature.AddressOf(http), "the first");
        log.LogInformation("The first host account was made.");
        return Results.Redirect("/meals");
    }

    static RazorComponentResult<FirstStartPage> Page(string? name = null, string? secret = null, AccountFault? fault = null, int status = StatusCodes.Status200OK) =>
        new(new Dictionary<string, object?>
        {
            [nameof(FirstStartPage.Name)] = name,
            [nameof(FirstStartPage.Secret)] = secret,
            [nameof(FirstStartPage.Message)] = fault is null ? null : HouseholdWords.Of(fault),
        })
        {
            StatusCode = status,
        };
}
