using System.Net;
using CookAlong.Web;
using CookAlong.Web.Cli;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using CookAlong.Web.Data.Backups;
using CookAlong.Web.Features.Api;
using CookAlong.Web.Features.Debrief;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Health;
using CookAlong.Web.Features.Health.Seen;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Leftovers;
using CookAlong.Web.Features.Licences;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Features.Problems;
using CookAlong.Web.Features.Secure;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Features.Shopping;
using CookAlong.Web.Features.Telemetry;
using CookAlong.Web.Security;
using CookAlong.Web.Shared;
using Microsoft.AspNetCore.HttpOverrides;

return await CommandLine.RunAsync(args);

/// <summary>The table of contents of the server that the verb 'serve' runs.</summary>
public partial class Program
{
    public static WebApplication Build(WebApplicationBuilder builder, HouseSettings settings)
    {
        builder.WebHost.UseUrls(HomeHttpsFeature.Addresses(settings));
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = RequestSize.Largest;
            server.Limits.EndSlowClients();
            server.UseHomeCertificate();
        });
        builder.Logging.AddHouseLog();

        var services = builder.Services;
        services.AddSingleton(TimeProvider.System);
        services.AddHouseholdData(settings);
        services.AddDailyBackups(settings);
        services.AddHousehold();
        services.AddHomeHttps(settings);
        services.AddLive(settings);
        services.AddSingleton<DemoMeals>().AddSingleton<HouseholdArchive>().AddSingleton<EarlierMeals>();
        services.AddDishes();
        services.AddPages();
        services.AddMeals(settings);
        services.AddPlanning();
        services.AddShopping();
        services.AddDebrief();
        services.AddSettings();
        services.AddHealth();
        services.AddLeftovers();
        services.AddApi();
        services.AddTelemetry(settings);
        services.Configure<ForwardedHeadersOptions>(options =>
        {
            options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
            foreach (var proxy in settings.Proxies)
            {
                options.KnownIPNetworks.Add(proxy);
            }
        });

        var app = builder.Build();
        AsSent.Note(app);
        app.UseForwardedHeaders();
        app.UseRootedAddresses(settings.BasePath);
        app.UseSecurityHeaders(settings.HstsCoversSubdomains);
        app.UseProblemPages();
        app.UseHostNames(settings.Hosts);
        app.UseHttpsOnly(settings);
        app.UseRequestSize();
        app.UseSameOrigin();
        // Not before the path is known that stands before all addresses.
        app.UseRouting();
        AddressLimits.Use(app);
        app.UseAuthentication();
        app.UsePaces();
        app.UseAuthorization();
        app.UseAntiforgery();

        app.MapStaticAssets();
        app.MapHealth();
        app.MapHousehold();
        app.MapSecure();
        app.MapSeen();
        app.MapLive();
        app.MapGet("/", () => Results.Redirect("/meals"));
        app.MapMeals();
        app.MapPlans();
        app.MapShopping();
        app.MapDebrief();
        app.MapLeftovers();
        app.MapApi();
        app.MapLicences();
        app.MapPages();
        return app;
    }
}
