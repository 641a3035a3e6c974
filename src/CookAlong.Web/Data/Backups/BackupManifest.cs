using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Data.Backups;

/// <summary>What is known of a backup, kept beside it under its name and ".json".</summary>
/// <param name="Format"><see cref="TheFormat"/>.</param>
/// <param name="Made">When, UTC.</param>
/// <param name="Schema">The last migration it has had; null = none.</param>
/// <param name="Sha256">Of the file, hexadecimal in small letters.</param>
/// <param name="Meals">How many; null = it had no such table yet, as with the next two.</param>
/// <param name="Keys">Names of the key files of the data folder then, without their content: whether they fit can be told later.</param>
sealed record BackupManifest(string Format, DateTimeOffset Made, string? Schema, string Sha256, long Bytes, long? Meals, long? Dishes, long? Runs, IReadOnlyList<string> Keys)
{
    const string TheFormat = "cookalong-backup/1";

    static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    public static BackupManifest Of(string database, string keys, DateTimeOffset now)
    {
        string? schema;
        long? meals, dishes, runs;
        using (var copy = HouseholdData.Connection(database, pooling: false))
        {
            copy.Open();
            schema = Ask(copy, "__EFMigrationsHistory", "max(MigrationId)") as string;
            (meals, dishes, runs) = (Count(copy, "Meals"), Count(copy, "Dishes"), Count(copy, "RunRow"));
        }

        return new(TheFormat, now, schema, HashOf(database), new FileInfo(database).Length, meals, dishes, runs, KeysIn(keys));
    }

    /// <summary>Null when there is none that can be read.</summary>
    public static BackupManifest? Read(string backup)
    {
        try
        {
            return JsonSerializer.Deserialize<BackupManifest>(File.ReadAllText(FileOf(backup)), Json) is { Format: TheFormat } manifest ? manifest : null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or JsonException)
        {
            return null;
        }
    }

    public void Write(string backup) => File.WriteAllText(FileOf(backup), JsonSerializer.Serialize(this, Json));

    public static string FileOf(string backup) => backup + ".json";

    public static string HashOf(string file)
    {
        using var bytes = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(bytes));
    }

    public static IReadOnlyList<string> KeysIn(string folder) =>
        Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, "key-*.xml").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)] : [];

    static long? Count(SqliteConnection database, string table) => Ask(database, table, "count(*)") as long?;

    static object? Ask(SqliteConnection database, string table, string what)
    {
        using var command = database.CreateCommand();
        command.CommandText = $"SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = '{table}'";
        if (command.ExecuteScalar() is 0L)
        {
            return null;
        }

        command.CommandText = $"SELECT {what} FROM \"{table}\"";
        return command.ExecuteScalar();
    }
}
