using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Meals;

/// <summary>A household's database in a real SQLite file of its own, gone afterwards.</summary>
sealed class HouseholdFile : IDbContextFactory<CookAlongDb>, IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-");
    readonly DbContextOptions<CookAlongDb> options;

    public HouseholdFile()
    {
        var builder = new DbContextOptionsBuilder<CookAlongDb>();
        HouseholdData.UseFile(builder, Path.Combine(folder.FullName, "cookalong.db"));
        options = builder.Options;
        using var db = CreateDbContext();
        db.Database.EnsureCreated();
    }

    public string Folder => folder.FullName;

    public CookAlongDb CreateDbContext() => new(options);

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }
}
