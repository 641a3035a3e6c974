using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using CookAlong.Web.Data;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>
/// Many kitchens at once: runs with devices each, all lines open, and in each run a tap at a steady pace whether or not the one
/// before was answered. Devices, server and database share one machine, so a figure is that of all of it together.
/// </summary>
sealed class Load(KitchenProcess kitchen, IReadOnlyList<KitchenProcess> servers, LoadWanted wanted)
{
    static readonly TimeSpan LastNewsWithin = TimeSpan.FromSeconds(10);

    readonly ConcurrentDictionary<Guid, (Guid Run, double Milliseconds)> answered = new();
    readonly ConcurrentBag<double> heard = [];
    int refused;
    int failed;
    int expected;

    public static async Task<IReadOnlyList<(string What, string Figure)>> MeasureAsync(LoadWanted wanted)
    {
        if (wanted.Servers == 0)
        {
            await using var file = await KitchenProcess.StartAsync();
            return await new Load(file, [file], wanted).MeasureAsync();
        }

        await using var nodes = await TwoNodes.StartAsync();
        if (wanted.Servers == 1)
        {
            await nodes.Second.KillAsync();
            return await new Load(nodes.First, [nodes.First], wanted).MeasureAsync();
        }

        return await new Load(nodes.First, [nodes.First, nodes.Second], wanted).MeasureAsync();
    }

    async Task<IReadOnlyList<(string What, string Figure)>> MeasureAsync()
    {
        var before = servers.Select(server => server.Megabytes).ToArray();
        var runs = new List<Guid>();
        while (runs.Count < wanted.Runs)
        {
            runs.Add(await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow()));
        }

        var kitchens = new List<Kitchen>();
        foreach (var run in runs)
        {
            kitchens.Add(await Kitchen.OpenAsync(kitchen, run, wanted.Devices));
        }

        var (written, computed, watch) = (await WrittenAsync(), servers.Select(server => server.Computed).ToArray(), Stopwatch.StartNew());
        await Task.WhenAll(kitchens.Select((one, number) => TapAsync(one, number)));
        var took = watch.Elapsed;
        var cores = servers.Select((server, number) => (server.Computed - computed[number]) / took).ToArray();
        var commits = (await WrittenAsync() - written) / took.TotalSeconds;
        var lost = await LostAsync();
        var memory = servers.Select(server => server.Megabytes).ToArray();
        await Task.WhenAll(kitchens.SelectMany(one => one.Lines).Select(line => line.DisposeAsync().AsTask()));
        return
        [
            ($"{(wanted.Servers == 0 ? "SQLite file" : $"{wanted.Servers} of 2 servers on PostgreSQL")}: {wanted.Runs} runs of {wanted.Devices} devices, a tap every {wanted.Every} s in each, for {wanted.Seconds} s", ""),
            ("taps answered; refused; failed and not sent again", $"{answered.Count}; {refused}; {failed}"),
            ("tap to its answer, p50; p95", $"{At(answered.Values.Select(one => one.Milliseconds), 0.5):F0} ms; {At(answered.Values.Select(one => one.Milliseconds), 0.95):F0} ms"),
            ("tap to the news on each other device of the run, p50; p95", $"{At(heard, 0.5):F0} ms; {At(heard, 0.95):F0} ms"),
            ("answered and not in the log; news not heard within 10 s", $"{lost}; {expected - heard.Count} of {expected}"),
            ("events written, a second", $"{commits:F1}"),
            ("cores computing, of each server", string.Join("; ", cores.Select(share => $"{share:F2}"))),
            ("resident memory of each server; more than before the runs, for each run", $"{string.Join("; ", memory.Select(one => $"{one:F0} MB"))}; {1000 * (memory.Sum() - before.Sum()) / wanted.Runs:F0} kB"),
            ("load of the machine when this was over (1 min)", File.Exists("/proc/loadavg") ? (await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0] : "not known"),
        ];
    }

    /// <summary>Kitchens do not tap in step: each begins at its own part of the interval.</summary>
    async Task TapAsync(Kitchen one, int number)
    {
        await Task.Delay(TimeSpan.FromSeconds(wanted.Every * number / wanted.Runs));
        using var pace = new PeriodicTimer(TimeSpan.FromSeconds(wanted.Every));
        var sent = new List<Task>();
        for (var tap = 0; tap * wanted.Every < wanted.Seconds; tap++)
        {
            sent.Add(SendAsync(one, tap));
            await pace.WaitForNextTickAsync();
        }

        await Task.WhenAll(sent);
    }

    async Task SendAsync(Kitchen one, int tap)
    {
        var id = Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
        var line = one.Lines[tap % one.Lines.Count];
        var from = Stopwatch.GetTimestamp();
        try
        {
            var answer = await line.InvokeAsync<Web.Features.Live.Line.TapAnswer>(
                "Send", new { runId = one.Run, commandId = id, saw = 0, command = new { kind = tap % 2 == 0 ? "startStep" : "takeBack", step = ManyDue.Job(0).Value } });
            if (!answer.Accepted)
            {
                Interlocked.Increment(ref refused);
                return;
            }

            answered[id] = (one.Run, Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            Interlocked.Add(ref expected, one.Lines.Count - 1);
            foreach (var milliseconds in await one.HeardAsync(answer.Sequence, except: line, from, LastNewsWithin))
            {
                heard.Add(milliseconds);
            }
        }
        catch (Exception away) when (away is HubException or InvalidOperationException or IOException)
        {
            Interlocked.Increment(ref failed);
        }
    }

    async Task<int> WrittenAsync()
    {
        await using var db = kitchen.NewDb();
        return await db.Set<RunEventRow>().CountAsync();
    }

    async Task<int> LostAsync()
    {
        await using var db = kitchen.NewDb();
        var there = (await db.Set<RunEventRow>().Select(row => row.Command).ToListAsync()).ToHashSet();
        return answered.Keys.Count(id => !there.Contains(id));
    }

    static double At(IEnumerable<double> figures, double part) => figures.Order().ToList() is { Count: > 0 } all ? all[(int)(part * (all.Count - 1))] : double.NaN;

    /// <summary>One run and the lines of its devices, each with the times at which it heard of each number.</summary>
    sealed class Kitchen(Guid run)
    {
        readonly Dictionary<HubConnection, Heard> all = [];

        public Guid Run => run;

        public List<HubConnection> Lines { get; } = [];

        public static async Task<Kitchen> OpenAsync(KitchenProcess server, Guid run, int devices)
        {
            var kitchen = new Kitchen(run);
            for (var device = 0; device < devices; device++)
            {
                var line = server.NewLine();
                var heard = new Heard();
                line.On<JsonElement>("Changed", news => heard.Note(news.GetProperty("sequence").GetInt64()));
                await line.StartAsync();
                await line.InvokeAsync<JsonElement>("Enter", run);
                kitchen.all[line] = heard;
                kitchen.Lines.Add(line);
            }

            return kitchen;
        }

        /// <returns>Milliseconds until each other line knew of it; those that did not in time are left out.</returns>
        public async Task<IReadOnlyList<double>> HeardAsync(long sequence, HubConnection except, long from, TimeSpan within)
        {
            var times = await Task.WhenAll(all.Where(one => one.Key != except).Select(one => one.Value.OfAsync(sequence, within)));
            return [.. times.OfType<long>().Select(at => Stopwatch.GetElapsedTime(from, at).TotalMilliseconds)];
        }
    }

    sealed class Heard
    {
        readonly ConcurrentDictionary<long, TaskCompletionSource<long>> all = new();
        long last;

        public void Note(long sequence)
        {
            var now = Stopwatch.GetTimestamp();
            for (var number = Interlocked.Exchange(ref last, Math.Max(last, sequence)) + 1; number <= sequence; number++)
            {
                Of(number).TrySetResult(now);
            }
        }

        public async Task<long?> OfAsync(long sequence, TimeSpan within)
        {
            var heard = Of(sequence).Task;
            return await Task.WhenAny(heard, Task.Delay(within)) == heard ? await heard : null;
        }

        TaskCompletionSource<long> Of(long sequence) => all.GetOrAdd(sequence, _ => new(TaskCreationOptions.RunContinuationsAsynchronously));
    }
}

/// <param name="Servers">0 = one on a SQLite file; 1 or 2 on PostgreSQL behind nginx.</param>
/// <param name="Every">Seconds from a tap to the next in each run.</param>
sealed record LoadWanted(int Servers, int Runs, int Devices, double Every, int Seconds)
{
    public const string Usage = "load SERVERS RUNS DEVICES EVERY SECONDS, such as: load 2 50 6 2 60 (SERVERS 0 = one on a SQLite file)";

    /// <returns>Null when they are not such numbers.</returns>
    public static LoadWanted? Read(string[] words) =>
        words is [var servers, var runs, var devices, var every, var seconds]
        && Whole(servers) is >= 0 and <= 2 and var n && Whole(runs) is > 0 and var r && Whole(devices) is > 1 and var d && Whole(seconds) is > 0 and var s
        && double.TryParse(every, NumberStyles.Float, CultureInfo.InvariantCulture, out var e) && e > 0
            ? new(n, r, d, e, s)
            : null;

    static int? Whole(string word) => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
