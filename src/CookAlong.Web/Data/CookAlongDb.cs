using CookAlong.Web.Data.Postgres;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Data;

/// <summary>Everything a household keeps. A run's truth is its event log; everything else is rows.</summary>
public class CookAlongDb : DbContext
{
    public CookAlongDb(DbContextOptions<CookAlongDb> options)
        : base(options)
    {
    }

    private protected CookAlongDb(DbContextOptions options)
        : base(options)
    {
    }

    public DbSet<HostRow> Hosts => Set<HostRow>();

    public DbSet<SessionRow> Sessions => Set<SessionRow>();

    public DbSet<MealRow> Meals => Set<MealRow>();

    public DbSet<PlanRow> Plans => Set<PlanRow>();

    public DbSet<DishRow> Dishes => Set<DishRow>();

    public DbSet<DishVersionRow> DishVersions => Set<DishVersionRow>();

    /// <summary>Nothing was written, because a number or a name was taken meanwhile, or a row that was pointed at has gone: look again.</summary>
    public static bool IsTaken(DbUpdateException failure) => failure.InnerException is SqliteException { SqliteErrorCode: SqliteConstraint } || PostgresFailure.IsTaken(failure.InnerException);

    const int SqliteConstraint = 19;

    // Each table's shape stands beside its row class, as an IEntityTypeConfiguration.
    protected override void OnModelCreating(ModelBuilder modelBuilder) => modelBuilder.ApplyConfigurationsFromAssembly(typeof(CookAlongDb).Assembly);
}
