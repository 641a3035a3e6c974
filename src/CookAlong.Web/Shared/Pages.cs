using CookAlong.Web.Security;
using MudBlazor.Services;

namespace CookAlong.Web.Shared;

/// <summary>The interactive planning pages and what they run on.</summary>
public static class Pages
{
    /// <summary>
    /// How long a browser may be silent before its line is cut off here. A slow phone that lays out a long text says nothing for as long
    /// as that takes, and what is tapped while its line is built up again would be lost. It calls a silent server lost far sooner: App.razor.js.
    /// </summary>
    static readonly TimeSpan Silence = TimeSpan.FromSeconds(30);

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
