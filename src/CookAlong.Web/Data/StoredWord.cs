using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Data;

/// <summary>The thermometer's word as the log keeps it. Names never change.</summary>
static class StoredWord
{
    public static JsonObject Write(CoreWord word)
    {
        var json = new JsonObject { ["verdict"] = JsonNamingPolicy.CamelCase.ConvertName(word.Verdict.ToString()) };
        foreach (var (name, at) in new[] { ("earliest", word.Earliest), ("likely", word.Likely), ("latest", word.Latest) })
        {
            if (at is { } moment)
            {
                json[name] = Of(moment);
            }
        }

        if (word.Celsius is { } celsius)
        {
            json["celsius"] = celsius;
        }

        if (word.Rest is { } rest)
        {
            json["rest"] = Write(rest);
        }

        return json;
    }

    public static JsonObject Write(RestWord rest)
    {
        var json = new JsonObject
        {
            ["peak"] = new JsonArray(rest.Peak.Low, rest.Peak.Likely, rest.Peak.High),
            ["peakAfter"] = rest.PeakAfter.TotalMinutes,
            ["hot"] = new JsonArray(rest.Hot.Low.TotalMinutes, rest.Hot.Likely.TotalMinutes, rest.Hot.High.TotalMinutes),
            ["limit"] = rest.Limit,
            ["safeAt"] = rest.SafeAt is { } safe ? Of(safe) : null,
        };
        // Foil in a usual kitchen was all there was at first, and goes without saying.
        if ((rest.Under, rest.RoomCelsius) != (RestUnder.Foil, Roasting.UsualRoom))
        {
            (json["under"], json["room"]) = (Of(rest.Under), rest.RoomCelsius);
        }

        return json;
    }

    public static RestWord ReadRest(JsonObject json)
    {
        double[] Three(string name) => [.. json[name]!.AsArray().Select(one => one!.GetValue<double>())];
        var (peak, hot) = (Three("peak"), Three("hot"));
        return new RestWord(
            new(peak[0], peak[1], peak[2]),
            TimeSpan.FromMinutes(json["peakAfter"]!.GetValue<double>()),
            new(TimeSpan.FromMinutes(hot[0]), TimeSpan.FromMinutes(hot[1]), TimeSpan.FromMinutes(hot[2])),
            json["limit"]!.GetValue<double>(),
            json["safeAt"] is { } safe ? At(safe) : null)
        {
            Under = json["under"] is { } under ? UnderOf(under.GetValue<string>()) : RestUnder.Foil,
            RoomCelsius = json["room"] is { } room ? room.GetValue<int>() : Roasting.UsualRoom,
        };
    }

    public static CoreWord Read(JsonObject json)
    {
        var name = json["verdict"]!.GetValue<string>();
        return Enum.TryParse<CoreVerdict>(name, ignoreCase: true, out var verdict)
            ? new CoreWord(verdict, Maybe("earliest"), Maybe("likely"), Maybe("latest"), json["celsius"]?.GetValue<double>()) { Rest = json["rest"] is JsonObject rest ? ReadRest(rest) : null }
            : throw new InvalidDataException($"The log holds a verdict \"{name}\" that this version does not know.");

        DateTimeOffset? Maybe(string member) => json[member] is { } at ? At(at) : null;
    }

    public static string Of(RestUnder under) => JsonNamingPolicy.CamelCase.ConvertName(under.ToString());

    public static RestUnder UnderOf(string name) =>
        Enum.TryParse<RestUnder>(name, ignoreCase: true, out var under) ? under : throw new InvalidDataException($"The log holds a cover \"{name}\" that this version does not know.");

    public static string Of(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    public static DateTimeOffset At(JsonNode at) => DateTimeOffset.Parse(at.GetValue<string>(), CultureInfo.InvariantCulture);
}
