namespace CookAlong.Web.Data.Backups;

/// <summary>When the daily backup is made. Hours: common practice, no source.</summary>
static class BackupHour
{
    static readonly TimeOnly From = new(3, 0);
    static readonly TimeOnly To = new(5, 0);

    // Longer than the quiet hours, so that a night has one.
    static readonly TimeSpan Apart = TimeSpan.FromHours(4);
    static readonly TimeSpan Day = TimeSpan.FromDays(1);

    /// <summary>
    /// In the quiet hours; or, since a small machine may sleep at night, as soon as a day has passed. While somebody cooks
    /// it waits, but for a day and no longer.
    /// </summary>
    /// <param name="last">The last good one; before the first, when the household began.</param>
    public static bool IsDue(DateTimeOffset now, DateTimeOffset last, bool isCooking, TimeZoneInfo zone)
    {
        var age = now - last;
        var clock = TimeOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);
        var isQuiet = clock.IsBetween(From, To) && age >= Apart;
        return isCooking ? age >= 2 * Day : isQuiet || age >= Day;
    }
}
