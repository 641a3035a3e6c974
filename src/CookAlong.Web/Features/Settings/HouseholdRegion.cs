using System.Globalization;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Quantities;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Settings;

/// <param name="IsChosen">False: nobody has chosen, and it follows from this computer's language.</param>
public sealed record RegionInForce(Region Region, bool IsChosen);

/// <summary>Whose food authority this household follows, and whose spoons it measures with.</summary>
public sealed class HouseholdRegion(IDbContextFactory<CookAlongDb> databases)
{
    public async Task<RegionInForce> AskAsync(CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var chosen = await db.Set<SettingsRow>().AsNoTracking().Select(row => row.FoodRegion).SingleOrDefaultAsync(stop);
        return new RegionInForce(chosen ?? Supposed(CultureInfo.CurrentCulture.Name), chosen is not null);
    }

    public async Task ChooseAsync(Region region, CancellationToken stop = default) => await ChangeAsync(row => row.FoodRegion = region, stop);

    /// <summary>Whose spoons and cups are in its drawer: those that were chosen, else those of its region.</summary>
    public async Task<SpoonSizes> SpoonsAsync(CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<SettingsRow>().AsNoTracking().Select(row => row.Spoons).SingleOrDefaultAsync(stop) ?? SpoonsOf((await AskAsync(stop)).Region);
    }

    public async Task ChooseSpoonsAsync(SpoonSizes spoons, CancellationToken stop = default) => await ChangeAsync(row => row.Spoons = spoons, stop);

    async Task ChangeAsync(Action<SettingsRow> change, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        change(await db.Set<SettingsRow>().SingleOrDefaultAsync(stop) ?? db.Add(new SettingsRow()).Entity);
        await db.SaveChangesAsync(stop);
    }

    static SpoonSizes SpoonsOf(Region region) => region switch
    {
        Region.UnitedStates => SpoonSizes.UnitedStates,
        Region.Canada => SpoonSizes.Metric,
        Region.UnitedKingdom or Region.Scotland => SpoonSizes.UnitedKingdom,
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
