using System.Collections.Concurrent;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>Kills the server, or what it hangs on, at random moments while six cooks tap and answer calls, and counts what is missing afterwards.</summary>
sealed class CrashLoop(KitchenProcess kitchen, IReadOnlyList<IKilled> mortal, Guid run, int seed)
{
    /// <summary>A call whose server died over it is sent by the next after five seconds.</summary>
    static readonly TimeSpan CallsWithin = TimeSpan.FromSeconds(20);

    static readonly TimeSpan AnswersWithin = TimeSpan.FromSeconds(10);

    readonly ConcurrentDictionary<Guid, string> acknowledged = new();
    readonly ConcurrentDictionary<string, Guid> answered = new();
    readonly ConcurrentDictionary<string, int> rung = new();
    readonly ConcurrentBag<string> refused = [];
    int cutOff;
    volatile bool isOver;

    public static async Task<CrashReport> RunAsync(int kills, int seed)
    {
        await using var kitchen = await KitchenProcess.StartAsync();
        return await RunAsync(kitchen, [kitchen], kills, seed);
    }

    /// <param name="mortal">Killed in turn, one at a time; the others go on.</param>
    public static async Task<CrashReport> RunAsync(KitchenProcess kitchen, IReadOnlyList<IKilled> mortal, int kills, int seed) =>
        await new CrashLoop(kitchen, mortal, await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow()), seed).RunAsync(kills);

    async Task<CrashReport> RunAsync(int kills)
    {
        var chance = new Random(seed);
        var slowest = TimeSpan.Zero;
        var isAnyoneLeft = mortal is not [KitchenProcess];
        Task[] taps = [.. Enumerable.Range(0, ManyDue.Jobs).Select(TapAsync), AnswerAsync()];
        for (var kill = 0; kill < kills; kill++)
        {
            await using (await ListenAsync())
            {
                await Task.Delay(chance.Next(10, 700));
                await mortal[kill % mortal.Count].KillAsync();

                // Where another goes on, it is listened to meanwhile.
                await Task.Delay(isAnyoneLeft ? chance.Next(500, 3000) : 0);
            }

            var ready = await mortal[kill % mortal.Count].RestartAsync();
            slowest = ready > slowest ? ready : slowest;
        }

        await HeardAsync();
        isOver = true;
        await Task.WhenAll(taps);
        var unrung = await UnrungAsync();
        return await CountAsync(kills, slowest, unrung);
    }

    /// <summary>One cook, who begins a job and takes it back; a tap in doubt is sent again as it was.</summary>
    async Task TapAsync(int job)
    {
        using var device = kitchen.NewDevice();
        for (var number = 0; !isOver || number % 2 == 1; number++)
        {
            var kind = number % 2 == 0 ? "startStep" : "takeBack";
            var id = Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
            await UntilAnsweredAsync(id, new { kind, step = ManyDue.Job(job).Value }, device);
            acknowledged[id] = kind;

            // So that the server sees the job waiting, and calls.
            await Task.Delay(number % 2 == 1 ? 60 : 15);
        }
    }

    async Task AnswerAsync()
    {
        while (!isOver)
        {
            try
            {
                var now = TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds();
                foreach (var call in (await kitchen.CallsAsync(run)).Where(call => call.DueUtc <= now && !call.Acknowledged && rung.ContainsKey(call.CallId)))
                {
                    var id = Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
                    if (await UntilAnsweredAsync(id, new { kind = "acknowledge", call = call.CallId }))
                    {
                        answered[call.CallId] = id;
                    }
                }
            }
            catch (HttpRequestException)
            {
                // The server is away; the list is asked for again.
            }

            await Task.Delay(100);
        }
    }

    async Task<bool> UntilAnsweredAsync(Guid id, object command, HttpClient? device = null)
    {
        while (true)
        {
            try
            {
                var answer = await kitchen.TapAsync(run, id, command, device).WaitAsync(AnswersWithin);
                if (!answer.Accepted)
                {
                    refused.Add(answer.Reason ?? "");
                }

                return answer.Accepted;
            }
            catch (Exception away) when (away is HttpRequestException or TimeoutException or IOException)
            {
                Interlocked.Increment(ref cutOff);
                await Task.Delay(20);
            }
        }
    }

    /// <summary>As a screen does: a line that does not come up, on a machine that is busy, is opened anew.</summary>
    async Task<HubConnection> ListenAsync()
    {
        while (true)
        {
            var line = kitchen.NewLine();
            line.On<Web.Features.Live.Line.CallNews>("Ring", call => rung.AddOrUpdate(call.CallId, 1, (_, times) => times + 1));
            try
            {
                await line.StartAsync();
                await line.InvokeAsync<System.Text.Json.JsonElement>("Enter", run);
                return line;
            }
            catch (Exception away) when (away is OperationCanceledException or HttpRequestException or IOException or TimeoutException or HubException)
            {
                await line.DisposeAsync();
            }
        }
    }

    /// <summary>On a machine that is busy there may have been no moment between two kills for a call to be heard.</summary>
    async Task HeardAsync()
    {
        await using var line = await ListenAsync();
        for (var until = TimeProvider.System.GetUtcNow() + CallsWithin; rung.IsEmpty && TimeProvider.System.GetUtcNow() < until;)
        {
            await Task.Delay(100);
        }
    }

    /// <summary>Calls that are due and that the server, given time, has still not sent.</summary>
    async Task<int> UnrungAsync()
    {
        var until = TimeProvider.System.GetUtcNow() + CallsWithin;
        while (true)
        {
            var now = TimeProvider.System.GetUtcNow();
            string[] due = [.. (await kitchen.CallsAsync(run)).Where(call => call.DueUtc <= now.ToUnixTimeMilliseconds() && !call.Acknowledged).Select(call => call.CallId)];
            await using var db = kitchen.NewDb();
            var sent = await db.Set<CallRow>().CountAsync(call => call.Run == run && due.Contains(call.Call) && call.RungAt != null);
            if (sent == due.Length || now > until)
            {
                return due.Length - sent;
            }

            await Task.Delay(200);
        }
    }

    async Task<CrashReport> CountAsync(int kills, TimeSpan slowest, int unrung)
    {
        await using var db = kitchen.NewDb();
        var events = await db.Set<RunEventRow>().AsNoTracking().Where(row => row.Run == run).ToListAsync();
        var byCommand = events.ToLookup(row => row.Command);
        var calls = await kitchen.CallsAsync(run);
        var answers = events.Where(row => row.Kind.StartsWith("callAcknowledged", StringComparison.Ordinal)).ToList();
        return new CrashReport(
            kills,
            acknowledged.Count + answered.Count,
            cutOff,
            acknowledged.Keys.Count(id => !byCommand[id].Any()) + answered.Count(one => calls.Any(call => call.CallId == one.Key && !call.Acknowledged)),
            acknowledged.Count(one => byCommand[one.Key].Count(row => row.Kind.StartsWith(one.Value == "startStep" ? "stepStarted" : "stepTakenBack", StringComparison.Ordinal)) > 1),
            rung.Count,
            unrung,
            answers.Count - answers.Select(row => row.Document).Distinct().Count(),
            rung.Values.Count(times => times > 1),
            refused.Count(reason => !reason.Contains("call", StringComparison.Ordinal)),
            slowest);
    }
}

/// <param name="Acknowledged">Taps the server answered with yes.</param>
/// <param name="CutOff">Sendings that died with the server and were sent again.</param>
/// <param name="CommandsLost">Answered with yes, and not there afterwards.</param>
/// <param name="CommandsDoubled">There more than once.</param>
/// <param name="CallsLost">Due, and never sent.</param>
/// <param name="AnswersDoubled">Calls answered more than once.</param>
/// <param name="SentAgain">Calls sent again by the next server, under the same id, because the first died before it wrote that it had; a device rings once.</param>
/// <param name="Refused">Taps that were possible and refused.</param>
sealed record CrashReport(
    int Kills, int Acknowledged, int CutOff, int CommandsLost, int CommandsDoubled, int Calls, int CallsLost, int AnswersDoubled, int SentAgain, int Refused, TimeSpan SlowestReady)
{
    public IEnumerable<(string What, string Figure)> Rows =>
    [
        ("kills with SIGKILL, at random moments between taps", $"{Kills}"),
        ("taps acknowledged; sendings cut off and sent again", $"{Acknowledged}; {CutOff}"),
        ("acknowledged taps lost; doubled; refused though possible", $"{CommandsLost}; {CommandsDoubled}; {Refused}"),
        ("calls heard; lost; answered twice; sent again under the same id", $"{Calls}; {CallsLost}; {AnswersDoubled}; {SentAgain}"),
        ("longest time from a kill to ready", $"{SlowestReady.TotalSeconds:F1} s"),
    ];
}
