using System.Globalization;
using CookAlong.Domain.FoodSafety;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Settings;

/// <param name="IsChosen">False: nobody has chosen, and it follows from this computer's language.</param>
public sealed record RegionInForce(Region Region, bool IsChosen);

/// <summary>Whose food authority this household follows.</summary>
public sealed class HouseholdRegion(IDbContextFactory<CookAlongDb> databases)
{
    public async Task<RegionInForce> AskAsync(CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var chosen = await db.Set<SettingsRow>().AsNoTracking().Select(row => row.FoodRegion).SingleOrDefaultAsync(stop);
        return new RegionInForce(chosen ?? Supposed(CultureInfo.CurrentCulture.Name), chosen is not null);
    }

    public async Task ChooseAsync(Region region, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Set<SettingsRow>().SingleOrDefaultAsync(stop) ?? db.Add(new SettingsRow()).Entity;
        row.FoodRegion = region;
        await db.SaveChangesAsync(stop);
    }

    /// <summary>
    /// By a locale's name ("en-US", "gd-GB"). Of other countries no limits are held; leftovers are kept shortest in the United
    /// Kingdom, so that is where a household elsewhere begins, and its pages say so until somebody chooses.
    /// </summary>
    public static Region Supposed(string locale) => locale.Split('-')[^1] switch
    {
        "US" => Region.UnitedStates,
        "CA" => Region.Canada,
        _ when locale.StartsWith("gd", StringComparison.Ordinal) => Region.Scotland,
        _ => Region.UnitedKingdom,
    };
}
