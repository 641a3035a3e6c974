using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Quantities;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Meals;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Data;

/// <summary>Names that stand in households' files must be read for ever: these lists only ever grow.</summary>
public sealed class StoredNamesTests : IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();

    public void Dispose() => household.Dispose();

    [Fact]
    public void Verdicts_on_a_reading_are_stored_as_they_always_were()
    {
        string[] frozen =
        [
            "noForecast", "reached", "expected", "rangeOnly", "never", "impossible", "outOfOrder", "fell", "leapt", "farFromStart",
            "tooFast", "tooSlow", "longAfter", "frozen", "onceMore",
        ];
        Assert.Equal(frozen.Order(), Enum.GetValues<CoreVerdict>().Select(verdict => StoredWord.Write(new CoreWord(verdict))["verdict"]!.GetValue<string>()).Order());
        Assert.Equal(frozen, frozen.Select(name => StoredWord.Write(StoredWord.Read(new() { ["verdict"] = name }))["verdict"]!.GetValue<string>()));
    }

    [Fact]
    public void Covers_of_a_rest_are_stored_as_they_always_were() =>
        Assert.Equal(["nothing", "foil", "foilAndCloths"], Enum.GetValues<RestUnder>().Select(under => StoredWord.Of(StoredWord.UnderOf(StoredWord.Of(under)))));

    [Fact]
    public async Task Regions_are_stored_as_they_always_were()
    {
        string[] frozen = ["UnitedKingdom", "Scotland", "UnitedStates", "Canada"];
        var region = new HouseholdRegion(household);
        List<string> stored = [];
        foreach (var one in Enum.GetValues<Region>())
        {
            await region.ChooseAsync(one, Stop);
            stored.AddRange(await AskAsync("SELECT FoodRegion AS Value FROM Settings"));
            Assert.Equal(one, (await region.AskAsync(Stop)).Region);
        }

        Assert.Equal(frozen.Order(), stored.Order());
    }

    [Fact]
    public async Task Spoons_are_stored_as_they_always_were()
    {
        string[] frozen = ["Metric", "UnitedKingdom", "UnitedStates", "Australia"];
        var region = new HouseholdRegion(household);
        List<string> stored = [];
        foreach (var one in Enum.GetValues<SpoonSizes>())
        {
            await region.ChooseSpoonsAsync(one, Stop);
            stored.AddRange(await AskAsync("SELECT Spoons AS Value FROM Settings"));
            Assert.Equal(one, await region.SpoonsAsync(Stop));
        }

        Assert.Equal(frozen.Order(), stored.Order());
    }

    async Task<IReadOnlyList<string>> AskAsync(string sql)
    {
        await using var db = household.CreateDbContext();
        return await db.Database.SqlQueryRaw<string>(sql).ToListAsync(Stop);
    }
}
