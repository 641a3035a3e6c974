using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace CookAlong.Web.Security;

static class HomeHttpsFeature
{
    /// <exception cref="AuthorityException">There is an authority that cannot be used, or none where nothing but HTTPS is wanted.</exception>
    public static IServiceCollection AddHomeHttps(this IServiceCollection services, HouseSettings settings)
    {
        var authority = AuthorityFiles.Read(settings);
        if (settings.IsHttpsOnly && authority is null)
        {
            throw new AuthorityException("--https-only (COOKALONG_HTTPS_ONLY) is yes, but this household has no HTTPS yet. Run 'https on' first, or leave it out; behind a proxy the proxy does it.");
        }

        return services
            .AddSingleton(all => new HomeHttps(
                authority, () => HomeNames.OfThisMachine(settings.Hosts), all.GetRequiredService<TimeProvider>(), all.GetRequiredService<ILogger<HomeHttps>>()))
            .AddHostedService(all => all.GetRequiredService<HomeHttps>())
            .AddHostedService<HttpsAnnouncement>();
    }

    /// <summary>Beside every address of plain HTTP the same one over HTTPS, once there is an authority. Plain HTTP stays: the authority is fetched over it.</summary>
    public static string Addresses(HouseSettings settings)
    {
        var plain = settings.Urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return !AuthorityFiles.IsThere(settings) ? settings.Urls : string.Join(';', plain.Concat(plain
            .Select(url => BindingAddress.Parse(url)).Where(one => !one.IsUnixPipe)
            .Select(one => string.Create(CultureInfo.InvariantCulture, $"https://{one.Host}:{settings.HttpsPort}"))).Distinct());
    }

    public static void UseHomeCertificate(this KestrelServerOptions server)
    {
        var https = server.ApplicationServices.GetRequiredService<HomeHttps>();
        if (https.IsOn)
        {
            server.ConfigureHttpsDefaults(how => how.ServerCertificateSelector = (line, _) => https.For((line?.LocalEndPoint as IPEndPoint)?.Address));
        }
    }
}
