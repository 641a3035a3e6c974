using System.Diagnostics;
using System.Text.Json;
using System.Threading.Channels;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.SignalR.Client;

namespace CookAlong.Benchmarks;

/// <summary>Six screens of one run: from the tap on one to the new board in the hands of each other.</summary>
static class Taps
{
    const int Screens = 6;
    const int Rounds = 200;

    public static async Task<IEnumerable<(string What, string Figure)>> MeasureAsync(House house, Guid run, string step)
    {
        var screens = new List<(HubConnection Hub, Channel<long> News)>();
        for (var i = 0; i < Screens; i++)
        {
            var hub = Lines.To(house);
            var news = Channel.CreateUnbounded<long>();
            hub.On<JsonElement>("Changed", changed => news.Writer.TryWrite(changed.GetProperty("sequence").GetInt64()));
            await hub.StartAsync();
            await hub.InvokeAsync<JsonElement>("Enter", run);
            screens.Add((hub, news));
        }

        var told = new List<double>();
        var shown = new List<double>();
        for (var round = 0; round < Rounds; round++)
        {
            var watch = Stopwatch.StartNew();
            var kind = round % 2 == 0 ? "startStep" : "takeBack";
            var answer = await screens[0].Hub.InvokeAsync<TapAnswer>(
                "Send", new { runId = run, commandId = Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), saw = 0, command = new { kind, step } });
            if (!answer.Accepted)
            {
                throw new InvalidOperationException($"{kind} was refused: {answer.Reason}");
            }

            await Task.WhenAll(screens.Skip(1).Select(async screen =>
            {
                while (await screen.News.Reader.ReadAsync() < answer.Sequence)
                {
                }

                var heard = watch.Elapsed.TotalMilliseconds;
                await house.Client.GetStringAsync($"/cook/{run}/board-part");
                lock (told)
                {
                    told.Add(heard);
                    shown.Add(watch.Elapsed.TotalMilliseconds);
                }
            }));
        }

        foreach (var (hub, _) in screens)
        {
            await hub.DisposeAsync();
        }

        return
        [
            ($"tap heard on {Screens - 1} other screens, p50", $"{At(told, 0.5):F0} ms"),
            ($"tap heard on {Screens - 1} other screens, p95", $"{At(told, 0.95):F0} ms"),
            ($"new board fetched by each of them, p50", $"{At(shown, 0.5):F0} ms"),
            ($"new board fetched by each of them, p95", $"{At(shown, 0.95):F0} ms"),
        ];
    }

    static double At(List<double> figures, double part) => figures.Order().ElementAt((int)(part * (figures.Count - 1)));
}
