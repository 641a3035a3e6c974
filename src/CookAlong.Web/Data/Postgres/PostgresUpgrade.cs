using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CookAlong.Web.Data.Postgres;

/// <summary>Brings a shared database up to date. One server does it, the others wait; backups are the database's own affair.</summary>
static class PostgresUpgrade
{
    // Any number that nobody else locks by; PostgreSQL lets go of it when the connection ends, however it ends.
    const long Lock = 0x636F6F6B;

    // Seconds.
    const int Patience = 600;

    /// <returns>Names of the steps taken.</returns>
    /// <exception cref="UpgradeException">The message says what is the matter. Not to be tried in a loop.</exception>
    public static async Task<IReadOnlyList<string>> RunAsync(string address, ILogger log, CancellationToken stop)
    {
        try
        {
            // A pooled connection would keep the lock until somebody used it again.
            await using var alone = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(address) { Pooling = false }.ToString());
            await alone.OpenAsync(stop);
            await using var locking = new NpgsqlCommand($"SELECT pg_advisory_lock({Lock})", alone) { CommandTimeout = Patience };
            await locking.ExecuteNonQueryAsync(stop);

            await using var db = PostgresDb.At(address);
            var taken = await db.Database.GetAppliedMigrationsAsync(stop);
            if (taken.Except(db.Database.GetMigrations()).Max(StringComparer.Ordinal) is { } newer)
            {
                throw new UpgradeException($"The PostgreSQL database was made by a newer version of CookAlong (step {newer}). Install that version. Nothing was changed.");
            }

            string[] pending = [.. db.Database.GetMigrations().Except(taken)];
            if (pending.Length > 0)
            {
                await db.Database.MigrateAsync(stop);
                log.LogInformation("The database was brought up to date ({Steps} steps).", pending.Length);
            }

            return pending;
        }
        catch (Exception failure) when (PostgresFailure.Of(failure) is { } own)
        {
            throw new UpgradeException($"The PostgreSQL database cannot be used: {own.Message.TrimEnd('.')}. Look at COOKALONG_POSTGRES, and whether the database is there and its user may make tables.", failure);
        }
    }
}
