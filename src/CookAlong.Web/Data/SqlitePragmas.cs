using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace CookAlong.Web.Data;

/// <summary>
/// What every connection must say for itself. synchronous=FULL is the promise that a confirmed tap survives a power cut;
/// like foreign_keys and busy_timeout it belongs to the connection, not to the file, so it is set at each opening.
/// The journal mode (WAL) belongs to the file: <see cref="Upgrade"/> sees to it.
/// </summary>
sealed class SqlitePragmas : DbConnectionInterceptor
{
    const string Pragmas = "PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA busy_timeout=5000;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
