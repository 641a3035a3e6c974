using CookAlong.Web.Data;

namespace CookAlong.Web.Features.Household.Audit;

/// <summary>Lines written by the command line, on a database that a server may have open, of whatever schema it is.</summary>
static class OfflineAudit
{
    public static string Who => $"{Environment.UserName}, at the command line";

    /// <summary>Does nothing in a database of a version that kept no log.</summary>
    public static async Task WriteAsync(HouseSettings settings, TimeProvider time, AuditDeed deed, string? about)
    {
        await using var database = HouseholdData.Connection(settings.Database, pooling: false);
        await database.OpenAsync();
        await using var command = database.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = 'Audit'";
        if (await command.ExecuteScalarAsync() is 0L)
        {
            return;
        }

        command.CommandText = "INSERT INTO Audit (At, Deed, Who, About) VALUES ($at, $deed, $who, $about)";
        command.Parameters.AddWithValue("$at", time.GetUtcNow().ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$deed", deed.ToString());
        command.Parameters.AddWithValue("$who", Who);
        command.Parameters.AddWithValue("$about", (object?)about ?? DBNull.Value);
        await command.ExecuteNonQueryAsync();
    }
}
