using CookAlong.Web.Features.Live.Outward;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Live;

/// <summary>A kitchen whose calls go out to receivers of the test's own, and what leads to one.</summary>
static class OutwardKitchen
{
    public const string Secret = "the pantry key hangs behind the door";

    public static Task<LiveKitchen> StartAsync(Receiver? hook = null, Receiver? push = null) => LiveKitchen.StartedAsync(services =>
    {
        if (hook is not null)
        {
            var settings = (HouseSettings)services.Last(one => one.ServiceType == typeof(HouseSettings)).ImplementationInstance!;
            services.AddSingleton(settings with { Webhook = new Uri("http://hook.example/calls"), WebhookSecret = Secret });
            services.AddHttpClient(Webhook.Client).ConfigurePrimaryHttpMessageHandler(() => hook);
        }

        if (push is not null)
        {
            services.AddHttpClient(PushedBrowser.Client).ConfigurePrimaryHttpMessageHandler(() => push);
        }
    });

    public static async Task RoastIsDueAsync(LiveKitchen kitchen)
    {
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(21));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" })).Accepted);
    }

    public static async Task UnansweredAsync(LiveKitchen kitchen, Receiver receiver)
    {
        await RoastIsDueAsync(kitchen);
        kitchen.House.Clock.Advance(TimeSpan.FromSeconds(60));
        await kitchen.TickUntilAsync(receiver.Next);
    }

    public static async Task UntilAsync(Func<bool> holds)
    {
        while (!holds())
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }
}
