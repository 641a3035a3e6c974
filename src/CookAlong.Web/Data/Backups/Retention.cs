using System.Globalization;

namespace CookAlong.Web.Data.Backups;

/// <summary>Which daily backups are kept: close together near today, far apart long ago. Common practice, no source.</summary>
static class Retention
{
    public const int Days = 7;
    public const int Weeks = 4;
    public const int Months = 12;

    /// <summary>Those that are kept: the newest of each of the last days, weeks and months that have any. Nights missed cost nothing.</summary>
    public static IReadOnlySet<DateTimeOffset> Kept(IEnumerable<DateTimeOffset> made)
    {
        var newestFirst = made.OrderDescending().ToArray();
        return (HashSet<DateTimeOffset>)
        [
            .. NewestOfEach(at => DateOnly.FromDateTime(at.UtcDateTime), Days),
            .. NewestOfEach(at => (ISOWeek.GetYear(at.UtcDateTime), ISOWeek.GetWeekOfYear(at.UtcDateTime)), Weeks),
            .. NewestOfEach(at => (at.UtcDateTime.Year, at.UtcDateTime.Month), Months),
        ];

        IEnumerable<DateTimeOffset> NewestOfEach<T>(Func<DateTimeOffset, T> span, int most) => newestFirst.DistinctBy(span).Take(most);
    }
}
