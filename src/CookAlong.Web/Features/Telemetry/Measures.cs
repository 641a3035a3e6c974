using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace CookAlong.Web.Features.Telemetry;

/// <summary>What is counted and timed. It costs nothing while nobody listens; no name of a person, dish or meal is ever among it.</summary>
static class Measures
{
    public const string Name = "CookAlong";

    public static readonly Meter Meter = new(Name);

    public static readonly ActivitySource Traces = new(Name);

    /// <summary>By "outcome": accepted or refused; a refused one says by "refusal" which kind.</summary>
    static readonly Counter<long> taps = Meter.CreateCounter<long>("cookalong.taps", "{tap}", "Taps that were decided");

    static readonly Histogram<double> lateness = Meter.CreateHistogram<double>("cookalong.calls.lateness", "s", "How long after its time a call was sent to the screens");

    /// <summary>By "status": the plan's.</summary>
    static readonly Histogram<double> planning = Meter.CreateHistogram<double>("cookalong.planning.duration", "s", "How long a plan took");

    /// <summary>By "way" (webhook, broker, push) and "outcome" (arrived, failed).</summary>
    static readonly Counter<long> deliveries = Meter.CreateCounter<long>("cookalong.deliveries", "{delivery}", "Calls sent beyond the page");

    public static void Accepted() => taps.Add(1, new KeyValuePair<string, object?>("outcome", "accepted"));

    public static void Refused(string kind) => taps.Add(1, new("outcome", "refused"), new("refusal", kind));

    public static void Called(TimeSpan late) => lateness.Record(late.TotalSeconds);

    public static void Planned(TimeSpan took, string status) => planning.Record(took.TotalSeconds, new KeyValuePair<string, object?>("status", status));

    public static void Delivered(string way, bool arrived) => deliveries.Add(1, new("way", way), new("outcome", arrived ? "arrived" : "failed"));
}
