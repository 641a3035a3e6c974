using CookAlong.Web.Features.Telemetry;
using CookAlong.Web.Tests.Live;
using OpenTelemetry;
using OpenTelemetry.Metrics;

namespace CookAlong.Web.Tests.Telemetry;

public sealed class TelemetryTests
{
    [Fact]
    public async Task Taps_and_refusals_are_counted_by_their_kind_and_nobody_is_named()
    {
        var exported = new List<Metric>();
        using var metrics = Sdk.CreateMeterProviderBuilder().AddMeter(Measures.Name).AddInMemoryExporter(exported).Build();
        await using var kitchen = await LiveKitchen.StartedAsync();

        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "no-such-step" });

        metrics.ForceFlush();
        var taps = Tags(exported.Last(metric => metric.Name == "cookalong.taps"));
        Assert.Contains("outcome=accepted", taps);
        Assert.Contains(taps, tags => tags.StartsWith("outcome=refused refusal=", StringComparison.Ordinal));
        Assert.All(exported.SelectMany(Tags), tags => Assert.DoesNotContain(AppFactory.HostName, tags, StringComparison.Ordinal));
    }

    [Fact]
    public async Task With_a_collector_named_the_server_counts_what_is_cooked()
    {
        var exported = new List<Metric>();
        using var metrics = Sdk.CreateMeterProviderBuilder().AddMeter(Measures.Name).AddInMemoryExporter(exported).Build();
        await using var kitchen = await LiveKitchen.StartedAsync(settings: new() { ["otlp"] = "http://localhost:9" });

        metrics.ForceFlush();

        Assert.Contains(exported, metric => metric.Name == "cookalong.runs.live");
    }

    static List<string> Tags(Metric metric)
    {
        var all = new List<string>();
        foreach (ref readonly var point in metric.GetMetricPoints())
        {
            var tags = new List<string>();
            foreach (var tag in point.Tags)
            {
                tags.Add($"{tag.Key}={tag.Value}");
            }

            all.Add(string.Join(' ', tags));
        }

        return all;
    }
}
