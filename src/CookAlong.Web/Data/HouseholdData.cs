using CookAlong.Web.Data.Backups;
using CookAlong.Web.Data.Postgres;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;

namespace CookAlong.Web.Data;

/// <summary>
/// One folder holds everything: the database, its backups, and the keys that keep people signed in across restarts. With
/// PostgreSQL set, database and keys are there, for all servers of the household.
/// </summary>
public static class HouseholdData
{
    public static IServiceCollection AddHouseholdData(this IServiceCollection services, HouseSettings settings)
    {
        services.AddSingleton(settings);
        services.AddSingleton<Upgrade>();
        services.AddSingleton<Backup>();
        services.AddDbContextFactory<CookAlongDb>(options => Use(options, settings));

        // In a container these would otherwise be new after every update, and everybody signed out.
        var keys = services.AddDataProtection().SetApplicationName("CookAlong");
        if (settings.Postgres is null)
        {
            keys.PersistKeysToFileSystem(new DirectoryInfo(settings.Keys));
        }
        else
        {
            services.AddSingleton<SharedKeys>().AddSingleton<IConfigureOptions<KeyManagementOptions>>(all => all.GetRequiredService<SharedKeys>());
        }

        return services;
    }

    /// <summary>Of a file; PostgreSQL has its own.</summary>
    public static void AddDailyBackups(this IServiceCollection services, HouseSettings settings)
    {
        services.AddSingleton<DailyBackups>();
        if (settings.Postgres is null)
        {
            services.AddHostedService(all => all.GetRequiredService<DailyBackups>());
        }
    }

    public static void Use(DbContextOptionsBuilder options, HouseSettings settings)
    {
        if (settings.Postgres is { } address)
        {
            PostgresDb.Use(options, address);
        }
        else
        {
            UseFile(options, settings.Database);
        }
    }

    public static void UseFile(DbContextOptionsBuilder options, string database) =>
        options
            .UseSqlite(Connecting(database))
            .AddInterceptors(new SqlitePragmas());

    /// <summary>Not open yet, and without the pragmas of <see cref="SqlitePragmas"/>: for what must be known before EF is worth its start.</summary>
    /// <param name="pooling">False: the file is let go as soon as it is closed.</param>
    public static SqliteConnection Connection(string database, bool pooling = true) => new(Connecting(database, pooling));

    static string Connecting(string database, bool pooling = true) => new SqliteConnectionStringBuilder { DataSource = database, Pooling = pooling }.ToString();

    /// <summary>Only the server's own user may look in: it holds password hashes and keys.</summary>
    internal static void OpenFolder(string data)
    {
        if (Directory.Exists(data))
        {
            return;
        }

        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(data);
        }
        else
        {
            Directory.CreateDirectory(data, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }
}
