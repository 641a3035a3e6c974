using System.IO.Compression;
using System.Text.Json.Nodes;
using CookAlong.Web.Data;
using CookAlong.Web.Tests.Architecture;
using CookAlong.Web.Tests.Dishes;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace CookAlong.Web.Tests.Data;

/// <summary>A small database of every schema there ever was, with a row in each table, as it would lie in a household. Once written they never change.</summary>
public sealed class FrozenSchemas
{
    const string One = "0193E2A0-0000-7000-8000-000000000001";

    public static string Folder { get; } = Path.Combine(Sources.Root, "tests", "CookAlong.Web.Tests", "Data", "Schemas");

    public static string FileOf(string step) => Path.Combine(Folder, $"{step}.db.gz");

    /// <summary>To be run once after each new migration; what is frozen stays as it is.</summary>
    [Fact]
    public async Task Freeze()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COOKALONG_FREEZE") == "1", "Writes the databases of new schemas; set COOKALONG_FREEZE=1 to do it.");
        Directory.CreateDirectory(Folder);
        foreach (var step in Tables.Steps.Where(step => !File.Exists(FileOf(step))))
        {
            var file = Path.GetTempFileName();
            await MakeAsync(file, step);
            await using (var from = File.OpenRead(file))
            await using (var to = new GZipStream(File.Create(FileOf(step)), CompressionLevel.SmallestSize))
            {
                await from.CopyToAsync(to, TestContext.Current.CancellationToken);
            }

            File.Delete(file);
        }
    }

    static async Task MakeAsync(string file, string step)
    {
        var options = new DbContextOptionsBuilder<CookAlongDb>();
        HouseholdData.UseFile(options, file);
        await using (var db = new CookAlongDb(options.Options))
        {
            await db.GetService<IMigrator>().MigrateAsync(step, TestContext.Current.CancellationToken);
        }

        SqliteConnection.ClearAllPools();
        using var database = new SqliteConnection($"Data Source={file};Pooling=False");
        database.Open();
        Run(database, "PRAGMA foreign_keys=OFF");
        foreach (var table in Rows(database, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' AND name NOT LIKE 'sqlite%'"))
        {
            var columns = Rows(database, $"SELECT name || ' ' || type || ' ' || \"notnull\" FROM pragma_table_info('{table}')").Select(column => column.Split(' ')).ToArray();
            using var insert = database.CreateCommand();
            insert.CommandText = $"INSERT INTO \"{table}\" ({string.Join(", ", columns.Select(column => $"\"{column[0]}\""))}) VALUES ({string.Join(", ", columns.Select(column => $"${column[0]}"))})";
            foreach (var column in columns)
            {
                insert.Parameters.AddWithValue($"${column[0]}", Value(table, column[0], column[1], isRequired: column[2] == "1"));
            }

            insert.ExecuteNonQuery();
        }

        // As a server leaves it, and small.
        Run(database, "PRAGMA page_size=512; VACUUM; PRAGMA journal_mode=WAL");
    }

    /// <summary>Every id is the same one, so that whatever points at something finds it.</summary>
    static object Value(string table, string column, string type, bool isRequired) => (table, column, type) switch
    {
        ("RunEvents", "Kind", _) => "runStarted/1",
        ("RunEvents", "Document", _) => Start["document"]!.ToJsonString(),
        ("Meals", "Document", _) => Start["document"]!["meal"]!.ToJsonString(),
        ("DishVersions", "Document", _) => LeekTart.Json,
        ("OvenTrials", "Document", _) => "[]",
        (_, "Document", _) => "{}",
        // Moves of single aisles were given up when their whole order came; a tap on a list was not.
        ("ShoppingTaps", "IsOfHousehold", _) => 0,
        (_, "Name", _) => "Alder Lane",
        (_, "Role", _) => "Helper",
        (_, "FoodRegion", _) => "Scotland",
        ("Audit", "Deed", _) => "SignedIn",
        (_, "Spoons", _) => "Australia",
        (_, _, "TEXT") => isRequired || column is "By" ? One : DBNull.Value,
        (_, "Ended" or "UsedAt" or "EndedAt", _) => 1_797_757_200_000,
        (_, _, "INTEGER") => isRequired ? 1 : DBNull.Value,
        (_, _, "REAL") => 1.5,
        (_, _, "BLOB") => new byte[] { 1, 2, 3 },
        _ => throw new InvalidOperationException($"no value is known for {table}.{column}, {type}"),
    };

    static JsonNode Start { get; } = JsonNode.Parse(File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Live", "frozen-events.jsonl")).First())!;

    public static IReadOnlyList<string> Rows(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        List<string> all = [];
        while (rows.Read())
        {
            all.Add(rows.GetString(0));
        }

        return all;
    }

    static void Run(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
