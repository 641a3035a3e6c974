using CookAlong.Web.Data.Postgres;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CookAlong.Web.Features.Health;

/// <summary>Whether the shared database answers and fits. What else there is to look at is the database's own affair.</summary>
static class PostgresCheck
{
    public static async Task<Finding> RunAsync(string address, CancellationToken stop)
    {
        await using var db = PostgresDb.At(address);
        try
        {
            await db.Database.OpenConnectionAsync(stop);
            var version = ((NpgsqlConnection)db.Database.GetDbConnection()).PostgreSqlVersion.ToString();
            return HealthWords.PostgresAnswers(version, (await db.Database.GetPendingMigrationsAsync(stop)).Count());
        }
        catch (Exception failure) when (PostgresFailure.Of(failure) is { } own)
        {
            return HealthWords.PostgresAway(own.Message);
        }
    }
}
