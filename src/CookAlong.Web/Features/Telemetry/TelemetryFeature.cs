using System.Runtime.CompilerServices;
using CookAlong.Web.Features.Live.Runs;
using OpenTelemetry;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace CookAlong.Web.Features.Telemetry;

/// <summary>Metrics and traces by OpenTelemetry, to where --otlp says. Off unless it is set: then not even its packages are loaded.</summary>
static class TelemetryFeature
{
    public static IServiceCollection AddTelemetry(this IServiceCollection services, HouseSettings settings)
    {
        if (settings.Otlp is { } collector)
        {
            Send(services, collector);
        }

        return services;
    }

    // A method of its own, so that the packages are not looked for where it is not called.
    [MethodImpl(MethodImplOptions.NoInlining)]
    static void Send(IServiceCollection services, Uri collector)
    {
        services.AddHostedService<LiveGauge>();
        services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("cookalong"))
            .WithMetrics(metrics => metrics.AddMeter(Measures.Name).AddOtlpExporter(export => To(export, collector, "metrics")))
            .WithTracing(traces => traces.AddSource(Measures.Name).AddAspNetCoreInstrumentation().AddOtlpExporter(export => To(export, collector, "traces")));
    }

    static void To(OtlpExporterOptions export, Uri collector, string what)
    {
        export.Protocol = OtlpExportProtocol.HttpProtobuf;
        export.Endpoint = new Uri($"{collector.AbsoluteUri.TrimEnd('/')}/v1/{what}");
    }
}

/// <summary>How many meals are being cooked, rehearsals not counted.</summary>
sealed class LiveGauge(LiveRuns runs, RunClocks clocks) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken)
    {
        Measures.Meter.CreateObservableUpDownCounter(
            "cookalong.runs.live", () => runs.Known.Count(live => live.Current.Ended is null && !clocks.IsRehearsal(live.Current.Id)), "{run}", "Meals that are being cooked");
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
