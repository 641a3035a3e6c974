using CookAlong.Web.Features.Household;
using CookAlong.Web.Security;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Health.Seen;

/// <summary>For the host: what the server sees of the very request that asks, and what to change where that is wrong.</summary>
static class SeenFeature
{
    public static void MapSeen(this WebApplication app) =>
        app.MapGet("/server", (HttpContext http, HomeHttps https, HouseSettings settings) => new RazorComponentResult<SeenPage>(new Dictionary<string, object?>
        {
            [nameof(SeenPage.Facts)] = SeenWords.Facts(http, https, settings),
            [nameof(SeenPage.Findings)] = SeenWords.Findings(http).ToList(),
        })).RequireAuthorization(HouseholdFeature.HostPolicy);
}
