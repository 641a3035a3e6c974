using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Data;

/// <summary>Everything a household keeps. A run's truth is its event log; everything else is rows.</summary>
public sealed class CookAlongDb(DbContextOptions<CookAlongDb> options) : DbContext(options)
{
    public DbSet<HostRow> Hosts => Set<HostRow>();

    public DbSet<SessionRow> Sessions => Set<SessionRow>();

    public DbSet<MealRow> Meals => Set<MealRow>();

    public DbSet<PlanRow> Plans => Set<PlanRow>();

    public DbSet<DishRow> Dishes => Set<DishRow>();

    public DbSet<DishVersionRow> DishVersions => Set<DishVersionRow>();

    // Each table's shape stands beside its row class, as an IEntityTypeConfiguration.
    protected override void OnModelCreating(ModelBuilder modelBuilder) => modelBuilder.ApplyConfigurationsFromAssembly(typeof(CookAlongDb).Assembly);
}
