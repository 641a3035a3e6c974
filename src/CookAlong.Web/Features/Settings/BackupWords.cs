using System.Globalization;
using CookAlong.Web.Data.Backups;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Features.Settings;

/// <summary>What is said of backups, on the page and by the verbs.</summary>
static class BackupWords
{
    public const string OfPostgres = "The household is kept in PostgreSQL (COOKALONG_POSTGRES). Its copies are made and put back by the database's own means, such as pg_dump and pg_restore.";

    // Three nights missed are no accident.
    static readonly TimeSpan Stale = TimeSpan.FromDays(3);

    public static bool IsStale(KeptBackup last, DateTimeOffset now) => now - last.Made >= Stale;

    /// <summary>"Sunday 20 December 2026, 03:10, 6 hours ago; 1.2 MB; 4 meals, 34 dishes, 2 runs".</summary>
    public static string Of(KeptBackup backup, DateTimeOffset now, TimeZoneInfo zone)
    {
        var manifest = backup.Manifest!;
        return $"{At(backup.Made, zone)}, {Ago(now - backup.Made)}; {Size(manifest.Bytes)}; "
            + string.Join(", ", Counts(manifest));
    }

    public static string At(DateTimeOffset at, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(at, zone).ToString("dddd d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture) + (zone.BaseUtcOffset == TimeSpan.Zero && !zone.SupportsDaylightSavingTime ? " UTC" : "");

    /// <summary>"less than an hour ago", "6 hours ago", "3 days ago".</summary>
    public static string Ago(TimeSpan age) =>
        age < TimeSpan.FromHours(1) ? "less than an hour ago"
        : age < TimeSpan.FromDays(2) ? $"{MealWords.Many((int)age.TotalHours, "hour", "hours")} ago"
        : $"{(int)age.TotalDays} days ago";

    /// <summary>"120 KB", "1.2 MB", "3.4 GB"; 1 KB = 1000 bytes.</summary>
    public static string Size(long bytes) =>
        bytes < 1_000_000 ? $"{Math.Max(1, bytes / 1000)} KB"
        : bytes < 1_000_000_000 ? string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0.#} MB")
        : string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e9:0.#} GB");

    static IEnumerable<string> Counts(BackupManifest manifest)
    {
        foreach (var (count, one, more) in new[] { (manifest.Meals, "meal", "meals"), (manifest.Dishes, "dish", "dishes"), (manifest.Runs, "run", "runs") })
        {
            if (count is { } known)
            {
                yield return MealWords.Many((int)known, one, more);
            }
        }
    }
}
