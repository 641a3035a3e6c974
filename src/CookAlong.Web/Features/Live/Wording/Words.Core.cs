using System.Diagnostics;
using System.Globalization;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Live.Wording;

// The thermometer's word, as sentences. Only an expected time is ever called one.
public sealed partial class Words
{
    /// <summary>What somebody wrote, its degrees on one line with their sign.</summary>
    public static string Unbroken(string written) => written.Replace(" °", "\u00A0°", StringComparison.Ordinal);

    public static string Degrees(decimal celsius) => string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C");

    /// <summary>What a reading came to, and what to do where it cannot be believed.</summary>
    /// <param name="celsius">The reading itself.</param>
    public string Of(CoreWord word, decimal celsius) => word.Verdict switch
    {
        CoreVerdict.Reached => "done there; try a second place before you take it out",
        CoreVerdict.Expected => $"done at about {At(word.Likely!.Value)}, between {At(word.Earliest!.Value)} and {At(word.Latest!.Value)}",
        CoreVerdict.RangeOnly when word.Latest is { } latest => $"somewhere between {At(word.Earliest!.Value)} and {At(latest)}; another reading will tell more",
        CoreVerdict.RangeOnly => $"not before {At(word.Earliest!.Value)}; another reading will tell more",
        CoreVerdict.OnceMore => "there by one reading: take it once more, in a second place",
        CoreVerdict.NoForecast => "not there yet; nobody can say when",
        CoreVerdict.Never => $"this oven will not bring it there{(word.Celsius is { } highest ? $" (it comes to about {highest.ToString("0", CultureInfo.InvariantCulture)} °C)" : "")}: turn it up",
        CoreVerdict.Impossible or CoreVerdict.FarFromStart when word.Celsius is { } read => $"that cannot be °C; were it °F, it would be {read.ToString("0", CultureInfo.InvariantCulture)} °C",
        CoreVerdict.Impossible => "no roast is that warm or cold: read it again",
        CoreVerdict.FarFromStart => "far from how it went in: is the probe in the middle?",
        CoreVerdict.OutOfOrder => "older than the reading before it",
        CoreVerdict.LongAfter => "more than a day after it went in: is the date right?",
        CoreVerdict.Fell => "it fell in a hot oven: has the probe slipped? Put it back into the thickest part",
        CoreVerdict.Leapt => "it rose faster than meat can: has the probe fallen out, or does it touch metal?",
        CoreVerdict.TooFast => "faster than any such joint: does the probe touch a bone? Try the thickest part again",
        CoreVerdict.TooSlow => "slower than any such joint: are the weight and the oven as written?",
        CoreVerdict.Frozen => "there is ice in it: thaw it first; no time can be named",
        _ => throw new UnreachableException($"A verdict without a sentence: {word.Verdict}."),
    };

    /// <summary>What a thermometer in an oven showed last.</summary>
    public string Of(OvenShown shown) => $"It showed {Degrees(shown.Celsius)} at {At(shown.At)}{(shown.Dial == 0 ? "" : $", the dial at {shown.Dial} °C")}.";

    /// <summary>What it does after it has come out.</summary>
    public string Of(RestWord rest)
    {
        var rises = rest.Peak.Likely - rest.Peak.Low < 0.5 && rest.PeakAfter < TimeSpan.FromMinutes(3)
            ? "Once out it rises no further."
            : $"Once out it rises to about {Whole(rest.Peak.Likely)} °C ({Whole(rest.Peak.Low)} to {Whole(rest.Peak.High)}) within {Long(rest.PeakAfter)}.";
        var stays = rest.Hot.Likely > TimeSpan.Zero
            ? $"{Capital(Under(rest.Under))}, in a kitchen of {rest.RoomCelsius} °C, its middle stays above {Whole(rest.Limit)} °C for about {Long(rest.Hot.Likely)}, {Long(rest.Hot.Low)} at the least; its outside for less."
            : $"It is never at {Whole(rest.Limit)} °C, at which hot food is kept: serve it soon.";
        var safe = rest.SafeAt is { } at ? $" By time and temperature together its middle has had enough heat by {At(at)}." : "";
        return $"{rises} {stays}{safe}";
    }

    /// <summary>"under foil".</summary>
    public static string Under(RestUnder under) => under switch
    {
        RestUnder.Nothing => "uncovered",
        RestUnder.Foil => "under foil",
        RestUnder.FoilAndCloths => "under foil and cloths",
        _ => throw new UnreachableException($"A cover without a word: {under}."),
    };

    /// <summary>On a button.</summary>
    public static string Cover(RestUnder under) => under switch
    {
        RestUnder.Nothing => "Nothing",
        RestUnder.Foil => "Foil",
        RestUnder.FoilAndCloths => "Foil and cloths",
        _ => throw new UnreachableException($"A cover without a word: {under}."),
    };

    /// <summary>Where the plan lets it rest until it is not hot any more; null where it does not.</summary>
    /// <param name="waits">Minutes from coming out until its dish goes on, as things stand.</param>
    public static string? TooLong(RestWord rest, int waits) =>
        rest.Hot.Likely > TimeSpan.Zero && rest.Hot.Low < TimeSpan.FromMinutes(waits)
            ? $"It is to rest for {Long(TimeSpan.FromMinutes(waits))}, which is too long: keep it hot, or take it out later."
            : null;

    /// <summary>A joint that is out: in a few words, beside its time.</summary>
    public string Of(BoardResting one) =>
        one.HotUntil is not { } until ? "rests; serve it soon"
        : $"rests; hot until about {At(until)}{(one.IsTooLong ? ", which is too soon: keep it hot" : "")}";

    /// <summary>How long a dish has been neither hot nor cold, and how long it may.</summary>
    public static string Of(BoardStanding one) =>
        $"out of heat and cold for {Long(one.Out)}; all together {Long(one.Limit.Most)} at the most ({RegionWords.Of(one.Limit.Source)}). Serve it, heat it through, or put it in the fridge.";

    static string Whole(double celsius) => celsius.ToString("0", CultureInfo.InvariantCulture);

    static string Long(TimeSpan span) => DurationWords.Write((int)span.TotalMinutes);

    string NotYet(Refusal.CoreNotLongEnough one) =>
        $"{Step(one.Step)} has {one.Celsius} °C in the middle and is to keep it for {Minutes(one.Minutes)}: read it again at {At(one.Until)}, before it comes out.";

    string NotYet(Refusal.CoreNotReached one) => one switch
    {
        { Last: null } => $"{Step(one.Step)} is not done before the thermometer says {one.Celsius} °C in the middle. Take its temperature first.",
        { Last: { } last } => $"Not safe yet: {Step(one.Step)} needs {one.Celsius} °C in the middle, and at {At(last.At)} it had {Degrees(last.Celsius)}. {Sentence(Of(last.Word, last.Celsius))} Take it again, or the host can vouch for another check.",
    };

    /// <summary>The word on a reading, as a sentence of its own.</summary>
    public string Sentence(CoreReading reading) => Sentence(Of(reading.Word, reading.Celsius));

    /// <summary>The same, as a sentence of its own.</summary>
    public string Sentence(BoardResting one) => Sentence(Of(one));

    static string Capital(string words) => $"{char.ToUpperInvariant(words[0])}{words[1..]}";

    static string Sentence(string words) => $"{Capital(words)}{(words[^1] is '.' or '?' ? "" : ".")}";
}
