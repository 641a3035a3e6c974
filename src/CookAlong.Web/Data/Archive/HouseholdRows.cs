using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Data.Archive;

/// <summary>
/// All that a household takes along. Not accounts, passkeys, invitations, sessions, their log, codes to join, keys, push subscriptions, or calls and deliveries
/// under way: they belong to a server and its devices, and some are secrets.
/// </summary>
sealed class HouseholdRows
{
    public required IReadOnlyList<MealRow> Meals { get; init; }

    public required IReadOnlyList<PlanRow> Plans { get; init; }

    public required IReadOnlyList<AgainRow> Again { get; init; }

    public required IReadOnlyList<LeftoverRow> Leftovers { get; init; }

    public required IReadOnlyList<ShoppingTapRow> ShoppingTaps { get; init; }

    public required IReadOnlyList<DishRow> Dishes { get; init; }

    public required IReadOnlyList<DishVersionRow> DishVersions { get; init; }

    /// <summary>Runs that have ended.</summary>
    public required IReadOnlyList<RunRow> Runs { get; init; }

    public required IReadOnlyList<RunEventRow> RunEvents { get; init; }

    public required IReadOnlyList<WrittenTimeRow> WrittenTimes { get; init; }

    public required IReadOnlyList<DebriefNoteRow> DebriefNotes { get; init; }

    public required IReadOnlyList<ForgottenRunRow> ForgottenRuns { get; init; }

    public required IReadOnlyList<LearnedTimeRow> LearnedTimes { get; init; }

    public IReadOnlyList<AgainTickRow> AgainTicks { get; init; } = [];

    public IReadOnlyList<OvenTrialRow> OvenTrials { get; init; } = [];

    public IReadOnlyList<OvenFigureRow> OvenFigures { get; init; } = [];

    public IReadOnlyList<DebriefPhotoRow> DebriefPhotos { get; init; } = [];

    public required IReadOnlyList<SettingsRow> Settings { get; init; }

    /// <summary>As they stand at one moment.</summary>
    public static async Task<HouseholdRows> OfAsync(CookAlongDb db, CancellationToken stop)
    {
        await using var moment = await db.Database.BeginTransactionAsync(stop);
        var ended = db.Set<RunRow>().Where(run => run.Ended != null);
        return new()
        {
            Meals = await All(db.Meals),
            Plans = await All(db.Plans),
            Again = await All(db.Set<AgainRow>()),
            Leftovers = await All(db.Set<LeftoverRow>()),
            ShoppingTaps = await All(db.Set<ShoppingTapRow>()),
            Dishes = await All(db.Dishes),
            DishVersions = await All(db.DishVersions),
            Runs = await All(ended),
            RunEvents = await All(db.Set<RunEventRow>().Where(row => ended.Any(run => run.Id == row.Run)).OrderBy(row => row.Run).ThenBy(row => row.Sequence)),
            WrittenTimes = await All(db.Set<WrittenTimeRow>().Where(row => ended.Any(run => run.Id == row.Run))),
            DebriefNotes = await All(db.Set<DebriefNoteRow>().Where(row => ended.Any(run => run.Id == row.Run))),
            ForgottenRuns = await All(db.Set<ForgottenRunRow>().Where(row => ended.Any(run => run.Id == row.Run))),
            LearnedTimes = await All(db.Set<LearnedTimeRow>()),
            AgainTicks = await All(db.Set<AgainTickRow>()),
            OvenTrials = await All(db.Set<OvenTrialRow>()),
            OvenFigures = await All(db.Set<OvenFigureRow>()),
            DebriefPhotos = await All(db.Set<DebriefPhotoRow>().Where(row => ended.Any(run => run.Id == row.Run))),
            Settings = await All(db.Set<SettingsRow>()),
        };

        async Task<IReadOnlyList<T>> All<T>(IQueryable<T> rows)
            where T : class => await rows.AsNoTracking().ToListAsync(stop);
    }
}
