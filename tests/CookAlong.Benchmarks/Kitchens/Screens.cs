using System.Diagnostics;
using System.Text.Json;
using Microsoft.AspNetCore.SignalR.Client;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>How many screens and runs one box holds: the server as a process of its own, its screens' lines all from here.</summary>
static class Screens
{
    const int Lines = 1_000;
    const int Taps = 20;
    const int Runs = 200;
    static readonly TimeSpan Watched = TimeSpan.FromSeconds(15);
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    public static async Task<IReadOnlyList<(string What, string Figure)>> MeasureAsync()
    {
        var rows = new List<(string, string)>();
        await using var kitchen = await KitchenProcess.StartAsync();
        var run = await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow());
        await kitchen.Client.GetStringAsync($"/cook/{run}/board-part");
        rows.AddRange(await ManyRunsAsync(kitchen, run));
        rows.AddRange(await FanOutAsync(kitchen, run));
        rows.Add(("load of the machine when this was over (1 min, of 2 cores)", File.Exists("/proc/loadavg") ? (await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0] : "not known"));
        return rows;
    }

    static async Task<IEnumerable<(string, string)>> FanOutAsync(KitchenProcess kitchen, Guid run)
    {
        var before = kitchen.Megabytes;
        var heard = 0;
        var wanted = long.MaxValue;
        var all = new TaskCompletionSource();
        var lines = new List<HubConnection>();
        for (var number = 0; number < Lines; number++)
        {
            var line = kitchen.NewLine();
            line.On<JsonElement>("Changed", news =>
            {
                if (news.GetProperty("sequence").GetInt64() == Volatile.Read(ref wanted) && Interlocked.Increment(ref heard) == Lines)
                {
                    all.TrySetResult();
                }
            });
            await line.StartAsync();
            await line.InvokeAsync<JsonElement>("Enter", run);
            lines.Add(line);
        }

        var with = kitchen.Megabytes;
        var took = new List<double>();
        for (var tap = 0; tap < Taps; tap++)
        {
            (heard, all) = (0, new TaskCompletionSource());
            Volatile.Write(ref wanted, await SequenceAsync(lines[0], run) + 1);
            var watch = Stopwatch.StartNew();
            await kitchen.TapAsync(run, Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), new { kind = tap % 2 == 0 ? "startStep" : "takeBack", step = ManyDue.Job(1).Value });
            await all.Task.WaitAsync(Patience);
            took.Add(watch.Elapsed.TotalMilliseconds);
        }

        await Task.WhenAll(lines.Select(line => line.DisposeAsync().AsTask()));
        return
        [
            ($"one tap heard on all of {Lines:N0} lines, p50; p95 (of {Taps})", $"{At(took, 0.5):F0} ms; {At(took, 0.95):F0} ms"),
            ("resident memory of the server for each of them", $"{1000 * (with - before) / Lines:F0} kB"),
        ];
    }

    static async Task<IEnumerable<(string, string)>> ManyRunsAsync(KitchenProcess kitchen, Guid first)
    {
        var before = kitchen.Megabytes;
        var runs = new List<Guid> { first };
        while (runs.Count < Runs)
        {
            runs.Add(await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow()));
        }

        await Task.Delay(Watched);
        var computed = kitchen.Computed;
        await Task.Delay(Watched);
        var share = (kitchen.Computed - computed) / Watched;
        var took = new List<double>();
        foreach (var run in runs)
        {
            var watch = Stopwatch.StartNew();
            await kitchen.TapAsync(run, Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), new { kind = "startStep", step = ManyDue.Job(2).Value });
            took.Add(watch.Elapsed.TotalMilliseconds);
        }

        return
        [
            ($"{Runs} runs live at once: share of one core while nobody taps", $"{share:P0}"),
            ($"{Runs} runs live at once: a tap in each of them answered, p50; p95", $"{At(took, 0.5):F0} ms; {At(took, 0.95):F0} ms"),
            ($"{Runs} runs live at once: resident memory for each", $"{1000 * (kitchen.Megabytes - before) / Runs:F0} kB"),
        ];
    }

    static async Task<long> SequenceAsync(HubConnection line, Guid run) => (await line.InvokeAsync<JsonElement>("Enter", run)).GetProperty("sequence").GetInt64();

    static double At(List<double> figures, double part) => figures.Order().ElementAt((int)(part * (figures.Count - 1)));
}
