using System.IO.Compression;
using CookAlong.Domain.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Dishes;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Data;

/// <summary>A household that skipped any number of updates loses nothing.</summary>
public sealed class EarlierSchemaTests : IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-test-");

    public static TheoryData<string> Steps => [.. Tables.Steps.Where(step => File.Exists(FrozenSchemas.FileOf(step)))];

    string Database => Path.Combine(folder.FullName, "cookalong.db");

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }

    [Fact]
    public void Every_earlier_schema_is_frozen()
    {
        var missing = Tables.Steps.SkipLast(1).Where(step => !File.Exists(FrozenSchemas.FileOf(step)));
        Assert.True(!missing.Any(), $"not frozen: {string.Join(", ", missing)}; run the tests of the class FrozenSchemas with COOKALONG_FREEZE=1");
    }

    [Theory]
    [MemberData(nameof(Steps))]
    public async Task A_household_of_an_earlier_schema_is_brought_up_to_date_and_read(string step)
    {
        await ThawAsync(step);
        var before = Counts();
        Assert.All(before.Values, count => Assert.Equal(1, count));
        await using var services = new ServiceCollection()
            .AddLogging()
            .AddSingleton(TimeProvider.System)
            .AddHouseholdData(new HouseSettings(folder.FullName, HouseSettings.DefaultUrls, [], []))
            .AddSingleton<EventLog>()
            .AddDishes()
            .BuildServiceProvider();

        var steps = await services.GetRequiredService<Upgrade>().RunAsync(Stop);

        Assert.Equal(Tables.Steps.SkipWhile(one => one != step).Skip(1), steps);
        var after = Counts();
        Assert.All(before, table => Assert.Equal(table.Value, after[table.Key]));
        using (var database = HouseholdData.Connection(Database, pooling: false))
        {
            database.Open();
            Assert.Null(Soundness.BrokenPage(database) ?? Soundness.LostRow(database));
        }

        // Every row through the program's own classes: ids, enumerations, what may be missing.
        await using var db = await services.GetRequiredService<IDbContextFactory<CookAlongDb>>().CreateDbContextAsync(Stop);
        foreach (var type in db.Model.GetEntityTypes())
        {
            var rows = (IQueryable<object>)typeof(DbContext).GetMethod(nameof(DbContext.Set), [])!.MakeGenericMethod(type.ClrType).Invoke(db, [])!;
            Assert.Equal(after[type.GetTableName()!], (await rows.ToListAsync(Stop)).Count);
        }

        Assert.True(MealFile.Read((await db.Meals.SingleAsync(Stop)).Document).IsGood);
        var run = await services.GetRequiredService<EventLog>().LoadAsync(new RunId((await db.Set<RunRow>().SingleAsync(Stop)).Id), Stop);
        Assert.Equal("Small lunch", run!.Meal.Name);
        Assert.Equal(before.ContainsKey("Dishes") ? ["Leek tart"] : [], (await services.GetRequiredService<DishBook>().AllAsync(Stop)).Select(dish => dish.Dish.Name));
    }

    async Task ThawAsync(string step)
    {
        await using var from = new GZipStream(File.OpenRead(FrozenSchemas.FileOf(step)), CompressionMode.Decompress);
        await using var to = File.Create(Database);
        await from.CopyToAsync(to, Stop);
    }

    Dictionary<string, int> Counts()
    {
        using var database = HouseholdData.Connection(Database, pooling: false);
        database.Open();
        return FrozenSchemas.Rows(database, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' AND name NOT LIKE 'sqlite%'")
            .ToDictionary(table => table, table => int.Parse(FrozenSchemas.Rows(database, $"SELECT CAST(count(*) AS TEXT) FROM \"{table}\"")[0], null));
    }
}
