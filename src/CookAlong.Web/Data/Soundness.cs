using Microsoft.Data.Sqlite;

namespace CookAlong.Web.Data;

/// <summary>What SQLite itself finds wrong in a database. Reads all of it.</summary>
static class Soundness
{
    /// <returns>Null when every page is sound; else what is wrong.</returns>
    public static string? BrokenPage(SqliteConnection database)
    {
        using var check = database.CreateCommand();
        check.CommandText = "PRAGMA integrity_check(1)";
        try
        {
            return check.ExecuteScalar() is "ok" ? null : check.ExecuteScalar()?.ToString() ?? "no answer";
        }
        catch (SqliteException failure)
        {
            return failure.Message;
        }
    }

    /// <returns>Null when every row has what it points at; else what is wrong.</returns>
    public static string? LostRow(SqliteConnection database)
    {
        using var check = database.CreateCommand();
        check.CommandText = "SELECT \"table\", parent FROM pragma_foreign_key_check LIMIT 1";
        using var rows = check.ExecuteReader();
        return rows.Read() ? $"a row of {rows.GetString(0)} points at a row of {rows.GetString(1)} that is not there" : null;
    }
}
