using Microsoft.AspNetCore.SignalR;
using StackExchange.Redis;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>The live line over several servers: what one says to a run's screens, Redis carries to those of the others.</summary>
static class SharedLine
{
    /// <summary>For the live hub alone: registered for all hubs, it would carry the planning pages' own traffic too.</summary>
    public static void AddSharedLine(this IServiceCollection services, string redis)
    {
        var address = ConfigurationOptions.Parse(redis);
        // A server starts, and goes on, while Redis is away; it is tried again for ever. Nothing waits in a queue for it.
        address.AbortOnConnectFail = false;
        address.BacklogPolicy = BacklogPolicy.FailFast;
        services.AddSingleton<LineOverRedis>();
        services.AddSingleton<HubLifetimeManager<LiveHub>>(all => all.GetRequiredService<LineOverRedis>());
        services.AddHostedService(all => ActivatorUtilities.CreateInstance<OtherServers>(all, address));
    }

    public static bool IsAddress(string text)
    {
        try
        {
            return ConfigurationOptions.Parse(text).EndPoints.Count > 0;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
