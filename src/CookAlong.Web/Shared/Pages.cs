using CookAlong.Web.Security;
using MudBlazor.Services;

namespace CookAlong.Web.Shared;

/// <summary>The interactive planning pages and what they run on.</summary>
public static class Pages
{
    /// <summary>How long a page may be silent before either end calls the connection lost. The browser's side: App.razor.js.</summary>
    static readonly TimeSpan Silence = TimeSpan.FromSeconds(6);

    public static IServiceCollection AddPages(this IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents().AddHubOptions(hub =>
        {
            hub.ClientTimeoutInterval = Silence;
            hub.KeepAliveInterval = TimeSpan.FromSeconds(2);
        });
        services.AddCascadingAuthenticationState();
        services.AddMudServices(mud => mud.SnackbarConfiguration.PositionClass = MudBlazor.Defaults.Classes.Position.BottomCenter);
        return services;
    }

    public static void MapPages(this IEndpointRouteBuilder app) => app.MapRazorComponents<App>().AddInteractiveServerRenderMode().WithMetadata(new PlanningPage());
}
