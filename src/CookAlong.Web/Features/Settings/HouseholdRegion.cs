using System.Globalization;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Quantities;
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

    /// <summary>Whose spoons and cups are in its drawer.</summary>
    public async Task<SpoonSizes> SpoonsAsync(CancellationToken stop = default) => Spoons((await AskAsync(stop)).Region, CultureInfo.CurrentCulture.Name);

    public async Task ChooseAsync(Region region, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Set<SettingsRow>().SingleOrDefaultAsync(stop) ?? db.Add(new SettingsRow()).Entity;
        row.FoodRegion = region;
        await db.SaveChangesAsync(stop);
    }

    /// <summary>Of Australia no authority's limits are held, so a household there is known by its computer's language alone.</summary>
    public static SpoonSizes Spoons(Region region, string locale) => region switch
    {
        Region.UnitedStates => SpoonSizes.UnitedStates,
        Region.Canada => SpoonSizes.Metric,
        Region.UnitedKingdom or Region.Scotland => locale.EndsWith("-AU", StringComparison.Ordinal) ? SpoonSizes.Australia : SpoonSizes.UnitedKingdom,
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

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
