using CookAlong.Web.Features.Household;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Licences;

/// <summary>Whose work this program is made of. For hosts: which versions run here is nobody else's to know.</summary>
static class LicencesFeature
{
    public static void MapLicences(this WebApplication app) =>
        app.MapGet("/licences", () => new RazorComponentResult<LicencesPage>(new { Parts = Parts.All() })).RequireAuthorization(HouseholdFeature.HostPolicy);
}
