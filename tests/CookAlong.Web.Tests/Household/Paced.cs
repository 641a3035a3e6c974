using System.Security.Claims;
using Bunit;
using Bunit.TestDoubles;
using CookAlong.Web.Features.Household;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace CookAlong.Web.Tests.Household;

/// <summary>A planning page on its own, opened by a host whose session has a pace.</summary>
static class Paced
{
    public static readonly Guid Session = new(5, 5, 5, new byte[8]);

    public static void AddPace(this BunitContext page, TimeProvider clock)
    {
        page.AddAuthorization().SetAuthorized("Maren").SetPolicies(HouseholdFeature.HostPolicy)
            .SetClaims(new Claim(Visitor.SessionClaim, Session.ToString()), new Claim(ClaimTypes.NameIdentifier, Guid.Empty.ToString()));
        page.Services.TryAddSingleton(clock);
        page.Services.AddSingleton(new Paces(clock)).AddScoped<PagePace>();
    }

    /// <summary>The session has just done as much of this as it may.</summary>
    public static void Spend(this Paces paces, Guid session, Deed deed)
    {
        while (paces.Take(session, deed) == TimeSpan.Zero)
        {
        }
    }
}
