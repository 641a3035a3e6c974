using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Data;

/// <summary>Whether a file is a database that this program can bring up to date and use.</summary>
static class Schema
{
    /// <returns>Null when it is; else the rest of a sentence that begins with the file's name, and what to do.</returns>
    public static async Task<string?> FaultAsync(string file, CancellationToken stop)
    {
        try
        {
            await using var database = HouseholdData.Connection(file, pooling: false);
            await database.OpenAsync(stop);
            return Fault(await Tables.TakenAsync(database, stop));
        }
        catch (SqliteException failure)
        {
            return $"cannot be read as a database ({failure.Message}): it is cut off, damaged or something else. Take another backup.";
        }
    }

    /// <param name="taken">Names of the migrations it has had.</param>
    /// <returns>As above.</returns>
    public static string? Fault(IReadOnlyList<string> taken) =>
        taken.Count == 0 ? "is a database of another program."
        : taken.Except(Tables.Steps).Max(StringComparer.Ordinal) is { } newer ? $"was made by a newer version of CookAlong (step {newer}). Install that version, or take a backup from before it."
        : null;
}
