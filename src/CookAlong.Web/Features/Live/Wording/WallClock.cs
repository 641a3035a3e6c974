using System.Globalization;
using CookAlong.Domain;

namespace CookAlong.Web.Features.Live.Wording;

/// <summary>Instants as the clock on the kitchen's wall shows them, and spans as a cook says them.</summary>
/// <param name="now">When they are read; null where it is said beside them, or does not matter.</param>
public sealed class WallClock(TimeZoneInfo zone, DateTimeOffset? now = null)
{
    /// <summary>"13:05"; "Mon 13:05" where that is another day than now.</summary>
    /// <remarks>Work begins days ahead: on the evening before, tomorrow's hour would be taken for today's.</remarks>
    public string Show(DateTimeOffset at)
    {
        var shown = TimeZoneInfo.ConvertTime(at, zone);
        var isToday = now is not { } read || shown.Date == TimeZoneInfo.ConvertTime(read, zone).Date;
        return shown.ToString(isToday ? "HH:mm" : "ddd HH:mm", CultureInfo.InvariantCulture);
    }

    public string Show(Minute at) => Show(at.Utc);

    /// <summary>What a countdown shows: "2:40", "81:40", from 100 minutes on "1 h 45"; past its end "+0:30".</summary>
    /// <remarks>The script counts on in the same shape (countdown.js).</remarks>
    public static string Left(TimeSpan left)
    {
        var past = left < TimeSpan.Zero;
        var seconds = (long)Math.Ceiling(Math.Abs(left.TotalSeconds));
        var digits = seconds >= 6000
            ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600} h {seconds / 60 % 60:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{seconds / 60}:{seconds % 60:00}");
        return past ? $"+{digits}" : digits;
    }

    /// <summary>"4 min", "1 h 30 min".</summary>
    public static string Length(TimeSpan length)
    {
        var minutes = (int)Math.Round(length.TotalMinutes, MidpointRounding.AwayFromZero);
        return minutes < 100 ? $"{minutes} min" : minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60} min";
    }

    /// <summary>0 to 100: how much of a span has run.</summary>
    public static int Percent(DateTimeOffset from, DateTimeOffset to, DateTimeOffset now) =>
        to <= from ? 100 : (int)Math.Clamp(100 * (now - from) / (to - from), 0, 100);
}
