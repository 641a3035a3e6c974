namespace CookAlong.Domain.Tests;

/// <summary>
/// Changes of the clocks. Source of the expected times: the IANA time zone database, zone Europe/Berlin, rule EU: summer time begins on
/// the last Sunday of March and ends on the last Sunday of October, both at 01:00 UTC; CET is UTC+1, CEST UTC+2.
/// </summary>
public sealed class MinuteTests
{
    static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    [Theory]
    [InlineData("2026-10-25T01:59", "2026-10-24T23:59Z")]
    [InlineData("2026-10-25T02:00", "2026-10-25T00:00Z")]
    [InlineData("2026-10-25T02:30", "2026-10-25T00:30Z")] // twice; the first pass
    [InlineData("2026-10-25T03:00", "2026-10-25T02:00Z")]
    [InlineData("2026-12-20T13:00", "2026-12-20T12:00Z")]
    [InlineData("2027-03-28T01:59", "2027-03-28T00:59Z")]
    [InlineData("2027-03-28T02:00", null)]
    [InlineData("2027-03-28T02:59", null)]
    [InlineData("2027-03-28T03:00", "2027-03-28T01:00Z")]
    public void A_wall_clock_in_Berlin_shows_one_minute_or_none(string local, string? utc) =>
        Assert.Equal(utc is null ? null : Minute.Of(Instant(utc)), LocalTime.Resolve(Wall(local), Berlin));

    [Theory]
    [InlineData("2027-03-28T02:00", "2027-03-28T03:00")]
    [InlineData("2027-03-28T02:30", "2027-03-28T03:30")]
    public void A_time_that_the_clock_skips_was_probably_meant_an_hour_later(string skipped, string meant) =>
        Assert.Equal(Wall(meant), LocalTime.MeantBy(Wall(skipped), Berlin));

    [Theory]
    [InlineData("2026-10-25T00:30Z", false)]
    [InlineData("2026-10-25T01:30Z", true)]
    [InlineData("2026-10-25T02:30Z", false)]
    public void The_second_pass_of_a_repeated_hour_is_told_apart(string utc, bool isSecond) =>
        Assert.Equal(isSecond, LocalTime.IsSecondPass(Minute.Of(Instant(utc)), Berlin));

    [Theory]
    [InlineData("2026-10-25T01:30", 90, "2026-10-25T02:00+01:00")]
    [InlineData("2027-03-28T01:30", 90, "2027-03-28T04:00+02:00")]
    public void A_step_keeps_its_minutes_across_a_change_of_the_clocks(string start, int minutes, string end) =>
        Assert.Equal(Instant(end), LocalTime.Show(LocalTime.Resolve(Wall(start), Berlin)!.Value + minutes, Berlin));

    [Fact]
    public void An_instant_falls_in_the_minute_that_has_begun()
    {
        Assert.Equal(new Minute(0), Minute.Of(Instant("1970-01-01T00:00:59Z")));
        Assert.Equal(new Minute(-1), Minute.Of(Instant("1969-12-31T23:59:59Z")));
    }

    static DateTimeOffset Instant(string text) => DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    static DateTime Wall(string text) => DateTime.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
