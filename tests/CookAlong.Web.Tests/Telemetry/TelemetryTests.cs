using System.Collections.Concurrent;
using System.Diagnostics;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Telemetry;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.SignalR.Client;
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
    public async Task How_late_a_call_was_sent_is_measured()
    {
        var exported = new List<Metric>();
        using var metrics = Sdk.CreateMeterProviderBuilder().AddMeter(Measures.Name).AddInMemoryExporter(exported).Build();
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var tablet = kitchen.Connect(kitchen.Host);
        var rung = new TaskCompletionSource();
        tablet.On<CallNews>("Ring", _ => rung.TrySetResult());
        await tablet.StartAsync(TestContext.Current.CancellationToken);
        await tablet.InvokeAsync<Entered>("Enter", kitchen.Run, TestContext.Current.CancellationToken);
        // Nobody's clock beat for a quarter of an hour: what was due at 12:20 comes late.
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(15));
        await kitchen.TickUntilAsync(rung.Task);

        metrics.ForceFlush();

        var late = new List<double>();
        foreach (ref readonly var point in exported.Last(metric => metric.Name == "cookalong.calls.lateness").GetMetricPoints())
        {
            Assert.True(point.GetHistogramCount() > 0);
            Assert.True(point.TryGetHistogramMinMaxValues(out var least, out var most));
            Assert.True(least >= 0);
            late.Add(most);
        }

        Assert.Contains(late, one => one > 0);
    }

    [Fact]
    public async Task A_tap_leaves_a_trace_with_its_command_and_its_refusal_and_no_name()
    {
        var traces = new ConcurrentQueue<Activity>();
        using var listener = new ActivityListener
        {
            ShouldListenTo = source => source.Name == Measures.Name,
            Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllData,
            ActivityStopped = traces.Enqueue,
        };
        ActivitySource.AddActivityListener(listener);
        await using var kitchen = await LiveKitchen.StartedAsync();

        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        await kitchen.TapAsync(kitchen.Host, new { kind = "readOven", oven = "no-such-oven", celsius = 171 });

        var told = traces.Where(trace => trace.OperationName == "tap").Select(trace => string.Join(' ', trace.Tags.Select(tag => $"{tag.Key}={tag.Value}"))).ToList();
        Assert.Contains("command=FinishStep", told);
        Assert.Contains("command=ReadOven refusal=UnknownOven", told);
        Assert.All(told, tags => Assert.DoesNotContain(AppFactory.HostName, tags, StringComparison.Ordinal));
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
