using System.Globalization;
using System.Text.RegularExpressions;
using CookAlong.Domain;
using CookAlong.Domain.Meals;

namespace CookAlong.Intake.Reading;

/// <summary>
/// Local times of a file: "2027-12-19T15:00", without offset. An hour that happens twice means its first pass;
/// the second is written with its offset ("2027-10-31T02:30+01:00").
/// </summary>
internal static partial class WallClock
{
    public const string Example = "2027-12-19T15:00";

    // Plans outside these years are mistakes, and keep the arithmetic of minutes far from its ends.
    private const int FirstYear = 2000;
    private const int LastYear = 2199;

    [GeneratedRegex(@"^(?<local>\d{4}-\d{2}-\d{2}T\d{2}:\d{2})(:00)?(?<offset>Z|[+-]\d{2}:\d{2})?$", RegexOptions.CultureInvariant)]
    private static partial Regex Form();

    [GeneratedRegex("^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*\\z", RegexOptions.CultureInvariant)]
    private static partial Regex ZoneName();

    /// <summary>The file's "timeZone"; null when absent, or with a note when there is none of that name.</summary>
    public static TimeZoneInfo? ZoneOf(Place root)
    {
        if (root.Member("timeZone")?.AsText(Place.LongestId) is not { } id)
        {
            return null;
        }

        // The form first: the platform looks a zone up by file name.
        if (ZoneName().IsMatch(id) && TimeZoneInfo.TryFindSystemTimeZoneById(id, out var zone) && zone.HasIanaId)
        {
            return zone;
        }

        root.Note("timeZone", $"There is no time zone \"{Place.Short(id)}\".", "Write an IANA name such as \"Europe/Berlin\" or \"Etc/UTC\".");
        return null;
    }

    public static string Write(Minute at, TimeZoneInfo zone)
    {
        var local = LocalTime.Show(at, zone);
        return local.ToString(LocalTime.IsSecondPass(at, zone) ? "yyyy-MM-dd'T'HH:mmzzz" : "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);
    }

    public static string Write(DateTime local) => local.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The wall-clock part and the offset when there is one; null when the text has another form.</summary>
    public static (DateTime Local, TimeSpan? Offset)? Split(string text)
    {
        // \d and $ are wider than they look: other scripts' digits and a last line break fail in the exact parse.
        var form = Form().Match(text);
        if (!form.Success
            || !DateTime.TryParseExact(form.Groups["local"].Value, "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var local)
            || local.Year is < FirstYear or > LastYear)
        {
            return null;
        }

        var offset = form.Groups["offset"];
        if (!offset.Success)
        {
            return (local, null);
        }

        if (offset.Value == "Z")
        {
            return (local, TimeSpan.Zero);
        }

        return TimeSpan.TryParseExact(offset.Value[1..], @"hh\:mm", CultureInfo.InvariantCulture, out var size) && size <= TimeSpan.FromHours(14)
            ? (local, offset.Value[0] == '-' ? -size : size)
            : null;
    }

    /// <param name="zone">Null when the file's zone is unknown: then only the form is held to.</param>
    public static Minute? Time(this Place place, string name, TimeZoneInfo? zone)
    {
        if (place.Member(name) is not { } member)
        {
            return null;
        }

        if (member.AsText(Place.LongestId) is not { } text)
        {
            return null;
        }

        if (Split(text) is not var (local, offset))
        {
            member.Note(
                $"\"{Place.Short(text)}\" is not a local date and time between the years {FirstYear} and {LastYear}.",
                $"Write it like \"{Example}\", in whole minutes and without offset.");
            return null;
        }

        return zone is null ? Minute.Of(new DateTimeOffset(local, TimeSpan.Zero))
            : offset is { } given ? Offset(member, local, given, zone)
            : Local(member, local, zone);
    }

    public static Minute RequiredTime(this Place place, string name, TimeZoneInfo? zone)
    {
        if (!place.Has(name))
        {
            place.NoteMissing(name, $"Add a local time such as \"{Example}\".");
        }

        return place.Time(name, zone) ?? default;
    }

    /// <summary>An hour of any day, "07:00"; midnight when absent or broken.</summary>
    public static TimeOnly ClockTime(this Place place, string name)
    {
        if (place.Member(name) is not { } member)
        {
            place.NoteMissing(name, "Add a time of the day such as \"07:00\".");
            return default;
        }

        if (member.AsText(Place.LongestId) is not { } text)
        {
            return default;
        }

        if (TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return time;
        }

        member.Note($"\"{Place.Short(text)}\" is not a time of the day.", "Write it like \"07:00\", from 00:00 to 23:59.");
        return default;
    }

    /// <summary>{from, to}; null when absent or broken.</summary>
    public static Window? Window(this Place span, TimeZoneInfo? zone)
    {
        var before = span.Findings.Count;
        var (from, to) = (span.RequiredTime("from", zone), span.RequiredTime("to", zone));
        if (span.Findings.Count > before)
        {
            return null;
        }

        if (from >= to)
        {
            span.Note("\"from\" is not before \"to\".", "Let the span begin before it ends.");
            return null;
        }

        return new Window(from, to);
    }

    private static Minute? Local(Place member, DateTime local, TimeZoneInfo zone)
    {
        if (LocalTime.Resolve(local, zone) is { } minute)
        {
            return minute;
        }

        var meant = Write(LocalTime.MeantBy(local, zone));
        member.Note($"{Write(local)} does not exist in {zone.Id}: the clocks go forward over it.", $"Write \"{meant}\", which is probably meant.");
        return null;
    }

    private static Minute? Offset(Place member, DateTime local, TimeSpan offset, TimeZoneInfo zone)
    {
        var instant = new DateTimeOffset(local, offset);
        if (zone.GetUtcOffset(instant) == offset)
        {
            return Minute.Of(instant);
        }

        member.Note(
            $"\"{member.Value.GetString()}\" carries an offset that {zone.Id} does not have then.",
            $"Write the local time without offset; if that instant is meant, \"{Write(Minute.Of(instant), zone)}\".");
        return null;
    }
}
