using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Data;

/// <summary>
/// The tables' state in a SQLite file, asked and first made in plain SQL. EF needs a second to start on a small machine, and at nearly
/// every start there is nothing to change; only a real change is left to it.
/// </summary>
static partial class Tables
{
    const string History = "__EFMigrationsHistory";

    /// <summary>
    /// Names of all migrations, the oldest first. As the script has them: to look for their classes would load every class of the
    /// program, and with them packages that a server may never need.
    /// </summary>
    public static IReadOnlyList<string> Steps { get; } = [.. Step().Matches(Script()).Select(line => line.Groups["name"].Value)];

    /// <summary>Names of the migrations this database has had; none when it is not one of ours yet.</summary>
    public static async Task<IReadOnlyList<string>> TakenAsync(SqliteConnection database, CancellationToken stop)
    {
        await using var command = database.CreateCommand();
        command.CommandText = $"SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = '{History}'";
        if (await command.ExecuteScalarAsync(stop) is 0L)
        {
            return [];
        }

        command.CommandText = $"SELECT MigrationId FROM {History}";
        var taken = new List<string>();
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop))
        {
            taken.Add(rows.GetString(0));
        }

        return taken;
    }

    /// <summary>All steps at once, in a database that has nothing: the script that EF writes of the migrations.</summary>
    public static async Task MakeAsync(SqliteConnection database, CancellationToken stop)
    {
        await using var command = database.CreateCommand();
        command.CommandText = Script();
        await command.ExecuteNonQueryAsync(stop);
    }

    static string Script()
    {
        using var reader = new StreamReader(typeof(Tables).Assembly.GetManifestResourceStream("tables.sql")!);
        return reader.ReadToEnd();
    }

    [GeneratedRegex(@"^VALUES \('(?<name>\d{14}_\w+)', ", RegexOptions.Multiline)]
    private static partial Regex Step();
}
