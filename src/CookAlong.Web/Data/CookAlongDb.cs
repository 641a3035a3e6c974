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

    // Each table's shape stands beside its row class. They are named one by one, since to look for them would load every class of the
    // program, and with them packages that a server may never need.
    protected override void OnModelCreating(ModelBuilder modelBuilder) => modelBuilder
        .ApplyConfiguration(new AgainRow.Shape())
        .ApplyConfiguration(new AgainTickRow.Shape())
        .ApplyConfiguration(new ApiTokenRow.Shape())
        .ApplyConfiguration(new AuditRow.Shape())
        .ApplyConfiguration(new CallRow.Shape())
        .ApplyConfiguration(new DebriefNoteRow.Shape())
        .ApplyConfiguration(new DebriefPhotoRow.Shape())
        .ApplyConfiguration(new DeliveryRow.Shape())
        .ApplyConfiguration(new DishRow.Shape())
        .ApplyConfiguration(new DishVersionRow.Shape())
        .ApplyConfiguration(new ForgottenRunRow.Shape())
        .ApplyConfiguration(new HostInvitationRow.Shape())
        .ApplyConfiguration(new HostRow.Shape())
        .ApplyConfiguration(new HouseKeyRow.Shape())
        .ApplyConfiguration(new JoinCodeRow.Shape())
        .ApplyConfiguration(new LearnedTimeRow.Shape())
        .ApplyConfiguration(new LeftoverRow.Shape())
        .ApplyConfiguration(new MealRow.Shape())
        .ApplyConfiguration(new OvenFigureRow.Shape())
        .ApplyConfiguration(new OvenTrialRow.Shape())
        .ApplyConfiguration(new PasskeyChallengeRow.Shape())
        .ApplyConfiguration(new PasskeyRow.Shape())
        .ApplyConfiguration(new PlanRow.Shape())
        .ApplyConfiguration(new PushSubscriptionRow.Shape())
        .ApplyConfiguration(new RunEventRow.Shape())
        .ApplyConfiguration(new RunRow.Shape())
        .ApplyConfiguration(new SessionRow.Shape())
        .ApplyConfiguration(new SettingsRow.Shape())
        .ApplyConfiguration(new ShoppingTapRow.Shape())
        .ApplyConfiguration(new WrittenTimeRow.Shape());
}
