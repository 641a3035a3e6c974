using CookAlong.Web.Data.Backups;

namespace CookAlong.Web.Tests.Data;

/// <summary>Hours and numbers: common practice, no source.</summary>
public sealed class BackupHourTests
{
    static readonly DateTimeOffset Now = new(2026, 12, 20, 3, 10, 0, TimeSpan.Zero);

    [Theory]
    [InlineData("03:10", 24, false, true)]
    [InlineData("03:10", 24, true, false)] // somebody cooks through the night
    [InlineData("04:50", 1.5, false, false)] // this night has had one
    [InlineData("03:10", 11, false, true)] // yesterday's came late, so the next is at its hour again
    [InlineData("05:00", 20, false, false)]
    [InlineData("14:00", 23, false, false)]
    [InlineData("14:00", 24, false, true)] // a machine that is off at night
    [InlineData("14:00", 47, true, false)]
    [InlineData("14:00", 48, true, true)] // it waits for a day and no longer
    public void A_backup_is_made_at_its_hour_or_when_a_day_has_passed(string clock, double hoursAgo, bool isCooking, bool isDue)
    {
        var now = new DateTimeOffset(DateOnly.FromDateTime(Now.DateTime), TimeOnly.Parse(clock, System.Globalization.CultureInfo.InvariantCulture), TimeSpan.Zero);

        Assert.Equal(isDue, BackupHour.IsDue(now, now - TimeSpan.FromHours(hoursAgo), isCooking, TimeZoneInfo.Utc));
    }

    [Fact]
    public void The_hour_is_the_machines_own()
    {
        var east = TimeZoneInfo.CreateCustomTimeZone("east", TimeSpan.FromHours(10), "east", "east");
        Assert.False(BackupHour.IsDue(Now, Now.AddHours(-20), isCooking: false, east));
        Assert.True(BackupHour.IsDue(Now.AddHours(-10), Now.AddHours(-30), isCooking: false, east));
    }

    [Fact]
    public void Of_a_year_of_backups_those_of_7_days_4_weeks_and_12_months_are_kept()
    {
        var made = Enumerable.Range(0, 400).Select(day => Now.AddDays(-day)).ToArray();

        var kept = Retention.Kept(made).OrderDescending().ToArray();

        // 20 December 2026 is a Sunday: the 14th to the 20th, the Sundays of three weeks before, and the last days of eleven months.
        Assert.Equal(made[..7], kept[..7]);
        Assert.Equal(["2026-12-13", "2026-12-06", "2026-11-30", "2026-11-29", "2026-10-31", "2026-09-30", "2026-08-31"], kept[7..14].Select(at => at.ToString("yyyy-MM-dd", null)));
        Assert.Equal("2026-01-31", kept[^1].ToString("yyyy-MM-dd", null));
        Assert.Equal(7 + 3 + 11, kept.Length);
    }

    [Fact]
    public void Day_by_day_the_folder_fills_to_the_same()
    {
        HashSet<DateTimeOffset> folder = [];
        for (var day = 0; day < 800; day++)
        {
            folder.Add(Now.AddDays(day));
            folder.IntersectWith(Retention.Kept(folder));
            Assert.InRange(folder.Count, 1, Retention.Days + Retention.Weeks + Retention.Months);
        }

        // What daily dropping leaves is what one dropping of everything would have left.
        Assert.Equal(Retention.Kept(Enumerable.Range(0, 800).Select(day => Now.AddDays(day))).Order(), folder.Order());
    }

    [Fact]
    public void A_machine_that_was_off_for_months_keeps_what_it_had()
    {
        DateTimeOffset[] made = [Now, Now.AddDays(-200), Now.AddDays(-201)];
        Assert.Equal(made.Order(), Retention.Kept(made).Order());
    }
}
