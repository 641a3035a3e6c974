using Npgsql;

namespace CookAlong.Web.Data.Postgres;

/// <summary>Apart from where it is asked, so that a server on a SQLite file never loads PostgreSQL's provider.</summary>
static class PostgresFailure
{
    // Class 23 of PostgreSQL's error codes (postgresql.org/docs, appendix A): integrity constraint violation.
    const string Constraint = "23";

    /// <summary>EF wraps what may pass. Null = another failure.</summary>
    public static NpgsqlException? Of(Exception failure) => failure as NpgsqlException ?? failure.InnerException as NpgsqlException;

    public static bool IsTaken(Exception? failure) => failure is PostgresException { SqlState: var state } && state.StartsWith(Constraint, StringComparison.Ordinal);
}
