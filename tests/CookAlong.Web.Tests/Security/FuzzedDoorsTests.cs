using System.Net;
using System.Net.Sockets;
using System.Text;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Security;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.Options;

namespace CookAlong.Web.Tests.Security;

/// <summary>Nonsense at every door is answered, and never by a failure of the server: 4xx, a refusal in words, or as if it were not there. Seeds are fixed.</summary>
public sealed class FuzzedDoorsTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static readonly string[] words =
        ["", "0", "-1", "1e999", "null", "[]", "{}", "\"", "\\", "\u0000", "'; DROP TABLE Hosts;--", "../../etc/hosts", "<script>", "%00", "ÿ", "😀", "00000000-0000-0000-0000-000000000000", "readCore", "readOven", "addTime", "stuff", "oven", "9999999999999999999"];

    static readonly string[] fields = ["kind", "step", "oven", "celsius", "fahrenheit", "minutes", "at", "call", "plan", "dish", "course", "helper", "to", "tend", "turn", "room", "under", "isOn", "person", "check"];

    static readonly string[] kinds =
    [
        "startStep", "finishStep", "takeBack", "claimStep", "letGoStep", "giveStep", "takeOver", "keepStep", "addTime", "takeBackTime", "finishTend", "takeBackTend", "readCore", "takeBackReading",
        "vouchFor", "takeBackWord", "setFoil", "coverRest", "acknowledge", "takeBackAnswer", "goOn", "acceptPlan", "takeBackPlan", "setPlanRule", "putOut", "helperLeaves", "helperStays", "addDish",
        "dropDish", "bringBackDish", "moveTable", "takeBackTable", "ovenStillHeats", "ovenOnTime", "readOven", "takeBackOvenReading", "join", "freeStep", "",
    ];

    [Fact]
    public async Task Commands_of_nonsense_are_refused_in_words_over_both_ways_in()
    {
        var luck = new Random(7);
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var tablet = kitchen.Connect(kitchen.Host);
        await tablet.StartAsync(Stop);
        await tablet.InvokeAsync<Entered>("Enter", kitchen.Run, Stop);
        for (var one = 0; one < 300; one++)
        {
            var command = Command(luck);
            var body = $$$"""{"runId":"{{{kitchen.Run}}}","commandId":"{{{LiveKitchen.NewCommand()}}}","saw":{{{luck.Next(-5, 99)}}},"command":{{{command}}}}""";
            if (one % 2 == 0)
            {
                using var posted = await kitchen.Host.Client.PostAsync($"/cook/{kitchen.Run}/taps", new StringContent(body, Encoding.UTF8, "application/json"), Stop);
                Assert.True((int)posted.StatusCode < 500, $"{(int)posted.StatusCode} to {body}");
            }
            else
            {
                var answer = await tablet.InvokeAsync<TapAnswer>("Send", System.Text.Json.JsonElement.Parse(body), Stop);
                Assert.True(answer.Accepted || answer.Reason!.Length > 0);
            }
        }

        // And the kitchen goes on.
        Assert.NotNull(await kitchen.LoadAsync());
        Assert.Equal(HubConnectionState.Connected, tablet.State);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("[1,2]")]
    [InlineData("{\"runId\":7}")]
    public async Task Bodies_that_are_no_tap_are_the_sender_s_mistake(string body)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var answer = await kitchen.Host.Client.PostAsync($"/cook/{kitchen.Run}/taps", new StringContent(body, Encoding.UTF8, "application/json"), Stop);
        Assert.InRange((int)answer.StatusCode, 400, 499);
    }

    [Fact]
    public async Task A_hub_method_of_another_shape_is_refused_and_the_line_stays()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var tablet = kitchen.Connect(kitchen.Host);
        await tablet.StartAsync(Stop);
        await Assert.ThrowsAsync<HubException>(() => tablet.InvokeAsync<Entered>("Enter", "no guid", Stop));
        await Assert.ThrowsAsync<HubException>(() => tablet.InvokeAsync<object>("NoSuchMethod", Stop));
        await Assert.ThrowsAsync<HubException>(() => tablet.InvokeAsync<TapAnswer>("Send", 7, 8, Stop));
        Assert.Equal(HubConnectionState.Connected, tablet.State);
    }

    [Fact]
    public async Task Headers_of_nonsense_fail_nothing()
    {
        string[] names = ["Accept", "Accept-Language", "Accept-Encoding", "If-None-Match", "If-Match", "If-Modified-Since", "Range", "Origin", "Referer", "Cookie", "Authorization", "Content-Type", "X-Forwarded-For", "X-Forwarded-Proto", "X-Forwarded-Host", "Forwarded", "Sec-Fetch-Site", "User-Agent"];
        var luck = new Random(11);
        await using var kitchen = await LiveKitchen.StartedAsync();
        string[] paths = [$"/cook/{kitchen.Run}", "/sign-in", "/meals", "/api/v1/meals", "/health/ready", $"/cook/{kitchen.Run}/debrief", "/css/board.css"];
        for (var one = 0; one < 200; one++)
        {
            using var request = new HttpRequestMessage(one % 5 == 0 ? HttpMethod.Post : HttpMethod.Get, paths[luck.Next(paths.Length)]);
            for (var header = 0; header < 3; header++)
            {
                request.Headers.TryAddWithoutValidation(names[luck.Next(names.Length)], string.Concat(words[luck.Next(words.Length)].Where(letter => letter is >= ' ' and < '\u007f')) + new string('a', luck.Next(40)));
            }

            using var answer = await kitchen.Host.Client.SendAsync(request, Stop);
            Assert.True((int)answer.StatusCode < 500, $"{(int)answer.StatusCode} to {request}");
        }
    }

    [Fact]
    public async Task Files_that_are_no_meals_are_named_as_such_and_nothing_is_kept()
    {
        var luck = new Random(13);
        var good = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "seed-data", "meals", "weeknight-three-dishes.json"), Stop);
        for (var one = 0; one < 300; one++)
        {
            var (at, length) = (luck.Next(good.Length), luck.Next(60));
            var broken = luck.Next(3) switch
            {
                0 => good.Remove(at, Math.Min(length, good.Length - at)),
                1 => good.Insert(at, words[luck.Next(words.Length)]),
                _ => good[..at],
            };
            var read = Intake.MealFiles.MealFile.Read(broken);
            Assert.True(read.IsGood || read.Errors.Length > 0);
        }
    }

    [Fact]
    public async Task Two_hundred_clients_that_never_finish_their_sentence_keep_nobody_waiting()
    {
        await using var house = new AppFactory();
        house.UseKestrel(0);
        house.StartServer();
        var address = house.ClientOptions.BaseAddress;
        var slow = new List<TcpClient>();
        try
        {
            for (var one = 0; one < 200; one++)
            {
                var client = new TcpClient();
                slow.Add(client);
                await client.ConnectAsync(address.Host, address.Port, Stop);
                await client.GetStream().WriteAsync("POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Le"u8.ToArray(), Stop);
            }

            using var http = new HttpClient { BaseAddress = address };
            using var answer = await http.GetAsync("/health/live", Stop);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }
        finally
        {
            slow.ForEach(client => client.Dispose());
        }
    }

    [Fact]
    public async Task A_client_that_stalls_in_its_headers_or_its_body_is_cut_off()
    {
        await using var house = new AppFactory();
        house.UseKestrel(0);
        house.StartServer();
        var limits = house.Get<IOptions<KestrelServerOptions>>().Value.Limits;
        Assert.Equal((SlowClients.HeadersWithin, SlowClients.Slowest, SlowClients.Slowest), (limits.RequestHeadersTimeout, limits.MinRequestBodyDataRate, limits.MinResponseDataRate));

        var ends = await Task.WhenAll(
            CutOffAsync("POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Le"),
            CutOffAsync("POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\nname=Mar"));
        Assert.All(ends, said => Assert.StartsWith("HTTP/1.1 4", said, StringComparison.Ordinal));

        // By the server's own clock, which is the machine's: there is nothing to wait for but the end.
        async Task<string> CutOffAsync(string begins)
        {
            using var client = new TcpClient();
            await client.ConnectAsync(house.ClientOptions.BaseAddress.Host, house.ClientOptions.BaseAddress.Port, Stop);
            await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(begins), Stop);
            using var answer = new StreamReader(client.GetStream());
            return await answer.ReadToEndAsync(Stop);
        }
    }

    static string Command(Random luck)
    {
        if (luck.Next(8) == 0)
        {
            return new[] { "null", "[]", "7", "\"x\"", "{}", "[[[[{}]]]]" }[luck.Next(6)];
        }

        var all = new Dictionary<string, object?> { ["kind"] = kinds[luck.Next(kinds.Length)] };
        for (var one = luck.Next(5); one > 0; one--)
        {
            all[fields[luck.Next(fields.Length)]] = luck.Next(6) switch
            {
                0 => luck.Next(),
                1 => -luck.NextDouble() * 1e300,
                2 => null,
                3 => luck.Next(2) == 0,
                4 => new[] { 1, 2 },
                _ => words[luck.Next(words.Length)],
            };
        }

        return System.Text.Json.JsonSerializer.Serialize(all);
    }
}
