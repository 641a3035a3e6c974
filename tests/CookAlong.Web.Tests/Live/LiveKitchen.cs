using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Live.Door;
using CookAlong.Web.Features.Live.Line;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Live;

/// <summary>A household with the small lunch, its plan, and its run once somebody starts it.</summary>
sealed partial class LiveKitchen(AppFactory house) : IAsyncDisposable
{
    public static readonly Guid MealRow = new(1, 2, 3, new byte[8]);
    static int commands;

    public AppFactory House => house;

    public Browser Host { get; private set; } = null!;

    public Guid Run { get; private set; }

    /// <summary>The clock stands at 12:20 when the host starts.</summary>
    /// <param name="roast">What the roast is to have in the middle; null = nobody reads its temperature.</param>
    /// <param name="settings">Of the server, beyond its data folder.</param>
    public static async Task<LiveKitchen> StartedAsync(Action<IServiceCollection>? replace = null, CoreWanted? roast = null, Dictionary<string, string>? settings = null)
    {
        var kitchen = new LiveKitchen(new AppFactory { Replace = replace });
        foreach (var (name, value) in settings ?? [])
        {
            kitchen.House.Settings[name] = value;
        }

        kitchen.House.Clock.SetUtcNow(SmallMeal.Clock(12, 20));
        kitchen.Host = await kitchen.House.HostAsync();
        await kitchen.PutMealAsync(roast);
        kitchen.Run = await kitchen.StartAsync();
        return kitchen;
    }

    /// <summary>The next server on the same file; like after a kill, this one was asked to finish nothing.</summary>
    public async Task<LiveKitchen> RestartedAsync()
    {
        var again = new LiveKitchen(house.Again()) { Run = Run };
        again.Host = await again.House.HostAsync();
        return again;
    }

    public async Task<Guid> StartAsync()
    {
        using var answer = await Host.PostFormAsync($"/meals/{MealRow}/runs", new() { ["go"] = "1" }, page: "/sign-in");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return Guid.Parse(answer.Headers.Location!.OriginalString.Split('/')[2]);
    }

    /// <summary>The codes that the host's page makes.</summary>
    public async Task<Invitation> InviteAsync(Role role = Role.Helper) =>
        await house.Get<JoinCodes>().InviteAsync(new RunId(Run), role);

    public static async Task<HttpResponseMessage> TryJoinAsync(Browser phone, string code, string name) =>
        await phone.PostFormAsync("/join", new() { ["code"] = code, ["name"] = name });

    /// <summary>A phone that joined under this name.</summary>
    public async Task<Browser> JoinAsync(string name, Role role = Role.Helper)
    {
        var phone = house.NewBrowser();
        var invitation = await InviteAsync(role);
        using var answer = await TryJoinAsync(phone, invitation.Typed, name);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return phone;
    }

    public async Task<TapAnswer> TapAsync(Browser screen, object command, Guid? id = null)
    {
        using var answer = await screen.PostJsonAsync($"/cook/{Run}/taps", new { runId = Run, commandId = id ?? NewCommand(), saw = 0, command });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<TapAnswer>(TestContext.Current.CancellationToken))!;
    }

    public static Guid NewCommand() => new(++commands, 7, 7, new byte[8]);

    /// <summary>The run as its log gives it back.</summary>
    public async Task<Run> LoadAsync() => (await house.Get<EventLog>().LoadAsync(new RunId(Run), TestContext.Current.CancellationToken))!;

    /// <summary>A socket as this browser would open it.</summary>
    public HubConnection Connect(Browser? screen, string origin = "http://localhost") =>
        new HubConnectionBuilder()
            .WithUrl(new Uri(house.Server.BaseAddress, LiveFeature.HubPath), options =>
            {
                options.SkipNegotiation = true;
                options.Transports = Microsoft.AspNetCore.Http.Connections.HttpTransportType.WebSockets;
                options.WebSocketFactory = async (context, stop) =>
                {
                    var client = house.Server.CreateWebSocketClient();
                    client.ConfigureRequest = request =>
                    {
                        request.Headers.Origin = origin;
                        request.Headers.Cookie = screen?.Cookies.Header ?? "";
                    };
                    return await client.ConnectAsync(context.Uri, stop);
                };
            })
            .Build();

    /// <summary>Moves the clock second by second until it has happened.</summary>
    public async Task TickUntilAsync(Task happened)
    {
        // Only bounds a test that fails: 600 looks, each with a tenth of a second for the server to act.
        for (var second = 0; second < 600 && !happened.IsCompleted; second++)
        {
            house.Clock.Advance(TimeSpan.FromSeconds(1));
            await Task.WhenAny(happened, Task.Delay(100, TestContext.Current.CancellationToken));
        }

        Assert.True(happened.IsCompleted, string.Join('\n', house.Log.TakeLast(30)));
    }

    public async ValueTask DisposeAsync() => await house.DisposeAsync();

    async Task PutMealAsync(CoreWanted? roast)
    {
        var meal = SmallMeal.WithCore(roast);
        await using var db = house.NewDb();
        db.Add(new MealRow { Id = MealRow, Name = "Small lunch", Document = MealFile.Write(meal), ChangedAt = 0 });
        db.Add(new PlanRow { Id = MealRow, Meal = MealRow, MealVersion = 1, Document = PlanFile.Write(SmallMeal.Plan, meal), MadeAt = 0 });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
    }
}
