using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Calls;
using CookAlong.Web.Features.Live.Door;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Log;
using CookAlong.Web.Features.Live.More;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Live.Probes;
using CookAlong.Web.Features.Live.Rehearsals;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.AspNetCore.Http.Connections;

namespace CookAlong.Web.Features.Live;

/// <summary>The live kitchen: runs, their screens, and the door.</summary>
public static class LiveFeature
{
    public const string HubPath = "/hubs/live";

    /// <summary>Bytes of one message from a screen; a tap has about 200.</summary>
    const int LargestMessage = 8 * 1024;

    public static IServiceCollection AddLive(this IServiceCollection services, HouseSettings settings)
    {
        services.AddSignalR(options =>
        {
            options.MaximumReceiveMessageSize = LargestMessage;

            // A screen says "not connected" after 5 s without a word; two of these fit into that.
            options.KeepAliveInterval = TimeSpan.FromSeconds(2);

            // Twice what clients ping by default; less would cut off screens that are merely quiet.
            options.ClientTimeoutInterval = TimeSpan.FromSeconds(30);
            options.EnableDetailedErrors = false;
        });
        if (settings.Redis is { } redis)
        {
            services.AddSharedLine(redis);
        }

        services.AddSingleton<HeardElsewhere>();
        services.AddSingleton<EventLog>();
        services.AddSingleton<LiveRuns>();
        services.AddSingleton<RunClocks>();
        services.AddSingleton<Boards>();
        services.AddSingleton<LiveScreens>();
        services.AddSingleton<LiveViews>();
        services.AddSingleton<RunLog>();
        services.AddSingleton<MoreDishes>();
        services.AddSingleton<IncomingTaps>();
        services.AddSingleton<ReplanOffers>();
        services.AddSingleton<OpenScreens>();
        services.AddSingleton<ByItself>();
        services.AddSingleton<JoinCodes>();
        services.AddSingleton<JoinTries>();
        services.AddProbes();
        services.AddSingleton<DueCalls>();
        services.AddOutward();
        services.AddHostedService<Farewell>();
        services.AddHostedService<CallClock>();
        services.AddHostedService<HeldLines>();
        services.AddHostedService<RehearsalHands>();
        return services;
    }

    public static void MapLive(this WebApplication app)
    {
        app.MapHub<LiveHub>(HubPath, options => options.Transports = HttpTransportType.WebSockets);
        app.MapLiveEndpoints();
        app.MapLivePages();
        app.MapProbes();
        app.MapRunLog();
        app.MapMoreDishes();
        app.MapOutward();
        app.MapInviting();
        app.MapJoining();
    }
}
