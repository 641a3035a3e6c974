using Microsoft.AspNetCore.Antiforgery;
using Microsoft.Extensions.Options;

namespace CookAlong.Web.Security;

/// <summary>
/// The antiforgery cookie, under a name of its own over HTTPS: a page by plain HTTP may neither read nor replace a Secure cookie
/// of its host (RFC 6265bis, 5.7), so with one name for both every form by HTTP would fail once HTTPS had been used.
/// </summary>
sealed class FormsCookie(IHttpContextAccessor requests) : CookieBuilder
{
    public const string PlainName = "cookalong-forms";

    public override string? Name
    {
        get => requests.HttpContext is { } http ? SecureName.Of(http, PlainName) : PlainName;
        set => throw new NotSupportedException();
    }

    public static void Use(IServiceCollection services)
    {
        services.AddHttpContextAccessor();
        services.AddSingleton<IConfigureOptions<AntiforgeryOptions>>(all => new ConfigureOptions<AntiforgeryOptions>(options => options.Cookie = new FormsCookie(all.GetRequiredService<IHttpContextAccessor>())
        {
            HttpOnly = true,
            IsEssential = true,
            SameSite = SameSiteMode.Strict,
            SecurePolicy = CookieSecurePolicy.SameAsRequest,
        }));
    }
}
