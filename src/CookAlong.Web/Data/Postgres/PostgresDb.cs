using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Npgsql;

namespace CookAlong.Web.Data.Postgres;

/// <summary>The same tables in PostgreSQL. A type of its own only so that its migrations stand apart; everything else uses <see cref="CookAlongDb"/>.</summary>
sealed class PostgresDb(DbContextOptions<PostgresDb> options) : CookAlongDb(options)
{
    public static bool IsAddress(string text)
    {
        try
        {
            return new NpgsqlConnectionStringBuilder(text) is { Host.Length: > 0, Database.Length: > 0 };
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    public static void Use(DbContextOptionsBuilder options, string address) => options.UseNpgsql(address);

    /// <summary>With its own migrations.</summary>
    public static PostgresDb At(string address)
    {
        var options = new DbContextOptionsBuilder<PostgresDb>();
        Use(options, address);
        return new PostgresDb(options.Options);
    }

    // Byte by byte, as SQLite orders texts; a database's own order may be any language's.
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) => configurationBuilder.Properties<string>().UseCollation("C");

    /// <summary>For <c>dotnet ef</c> only.</summary>
    sealed class DesignTime : IDesignTimeDbContextFactory<PostgresDb>
    {
        public PostgresDb CreateDbContext(string[] args) => At("Host=design-time;Database=design-time");
    }
}
