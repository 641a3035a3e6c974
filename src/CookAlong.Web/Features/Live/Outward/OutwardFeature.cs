using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Security;

namespace CookAlong.Web.Features.Live.Outward;

/// <summary>Calls beyond the page: subscriptions of browsers, the household's own receivers, tests of both.</summary>
static class OutwardFeature
{
    static readonly TimeSpan AnswersWithin = TimeSpan.FromSeconds(10);

    public static void AddOutward(this IServiceCollection services)
    {
        services.AddHttpClient(Webhook.Client, client => client.Timeout = AnswersWithin)
            .ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler { AllowAutoRedirect = false });

        // Where a browser wants to be called is the browser's word, so it is never believed about the home network.
        services.AddHttpClient(PushedBrowser.Client, client => client.Timeout = AnswersWithin)
            .ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler { AllowAutoRedirect = false, ConnectCallback = PublicAddresses.OfThisMachine.ConnectAsync });
        services.AddSingleton<PushKeys>();
        services.AddSingleton<PushSubscriptions>();
        services.AddSingleton<WaysOut>();
        services.AddSingleton<Deliveries>();
        services.AddSingleton<OutwardCalls>();
        services.AddSingleton<OutwardPost>();
        services.AddHostedService(services => services.GetRequiredService<OutwardPost>());
    }

    public static void MapOutward(this WebApplication app)
    {
        var outward = app.MapGroup("/cook/{run:guid}").AddEndpointFilter(NotInRehearsalAsync);
        var cook = outward.MapGroup("").RequireAuthorization(HouseholdFeature.InRunPolicy);
        cook.MapGet("/push-key", async (PushKeys keys, CancellationToken stop) => Results.Text((await keys.OfAsync(stop)).Public));
        cook.MapPost("/push", SubscribeAsync);
        cook.MapPost("/push/off", UnsubscribeAsync);
        cook.MapPost("/push/test", TestPushAsync);
        outward.MapGroup("").RequireAuthorization(HouseholdFeature.HostPolicy).MapPost("/ways-out/test", TestHouseAsync);
    }

    /// <summary>A rehearsal has no way beyond the page, not even a test of one.</summary>
    static async ValueTask<object?> NotInRehearsalAsync(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        var services = call.HttpContext.RequestServices;
        var run = new RunId(Guid.Parse((string)call.HttpContext.Request.RouteValues["run"]!));
        await services.GetRequiredService<LiveRuns>().FindAsync(run);
        return services.GetRequiredService<RunClocks>().IsRehearsal(run) ? Results.NotFound() : await next(call);
    }

    static async Task<IResult> SubscribeAsync(HttpContext http, Guid run, PushRequest asked, LiveViews views, PushSubscriptions subscriptions) =>
        await views.OfAsync(new RunId(run), http.User) is not { } view ? Results.NotFound()
        : await subscriptions.AddAsync(view.Run, view.Person, asked, http.RequestAborted) is { } why ? Results.BadRequest(why)
        : Results.NoContent();

    static async Task<IResult> UnsubscribeAsync(HttpContext http, Guid run, PushRequest asked, LiveViews views, PushSubscriptions subscriptions)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { } view)
        {
            return Results.NotFound();
        }

        await subscriptions.RemoveAsync(view.Run, view.Person, asked.Endpoint, http.RequestAborted);
        return Results.NoContent();
    }

    static async Task<IResult> TestPushAsync(HttpContext http, Guid run, LiveViews views, WaysOut ways, TimeProvider time) =>
        await views.OfAsync(new RunId(run), http.User) is { } view
            ? Results.Text(await TestAsync(await ways.OfAsync(view.Run, view.Person, http.RequestAborted), ways, run, time, http.RequestAborted))
            : Results.NotFound();

    static async Task<IResult> TestHouseAsync(HttpContext http, Guid run, WaysOut ways, TimeProvider time) =>
        Results.Text(await TestAsync(ways.OfHouse, ways, run, time, http.RequestAborted));

    /// <returns>What came of it, as a sentence.</returns>
    static async Task<string> TestAsync(IReadOnlyList<IWayOut> to, WaysOut ways, Guid run, TimeProvider time, CancellationToken stop)
    {
        var test = new OutwardCall(run, Call: null, "This is a test: a call would come like this", "low", time.GetUtcNow());
        var failures = (await Task.WhenAll(to.Select(way => ways.TrySendAsync(way, [test], stop)))).OfType<NotReachedException>().ToList();
        return to.Count == 0 ? "There is nobody to send a test to."
            : failures.Count == 0 ? "The test was sent and taken."
            : string.Join(' ', failures.Select(failed => failed.Message));
    }
}
