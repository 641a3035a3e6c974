namespace CookAlong.Domain;

/// <summary>Between the wall clock of a household and real minutes.</summary>
public static class LocalTime
{
    /// <summary>
    /// The minute a wall clock shows <paramref name="local"/>. An hour that happens twice (clocks go back) means
    /// its first pass; a time the clock skips (clocks go forward) has no minute and gives null.
    /// </summary>
    public static Minute? Resolve(DateTime local, TimeZoneInfo zone)
    {
        var wall = DateTime.SpecifyKind(local, DateTimeKind.Unspecified);
        if (zone.IsInvalidTime(wall))
        {
            return null;
        }

        // Of the two offsets of a repeated hour the larger one is the first pass (still on summer time).
        var offset = zone.IsAmbiguousTime(wall) ? zone.GetAmbiguousTimeOffsets(wall).Max() : zone.GetUtcOffset(wall);
        return Minute.Of(new DateTimeOffset(wall, offset));
    }

    /// <summary>What was probably meant by a time the clock skips: as far after the jump as it was after the last real minute.</summary>
    public static DateTime MeantBy(DateTime skipped, TimeZoneInfo zone)
    {
        var before = zone.GetUtcOffset(skipped.AddHours(-3));
        return TimeZoneInfo.ConvertTime(new DateTimeOffset(DateTime.SpecifyKind(skipped, DateTimeKind.Unspecified), before), zone).DateTime;
    }

    public static DateTimeOffset Show(Minute at, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(at.Utc, zone);

    /// <summary>True in the second pass of a repeated hour, when the wall clock alone does not say which is meant.</summary>
    public static bool IsSecondPass(Minute at, TimeZoneInfo zone) =>
        zone.IsAmbiguousTime(Show(at, zone).DateTime) && Resolve(Show(at, zone).DateTime, zone) != at;
}
