using System.Globalization;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Account;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Household.Hosts;
using CookAlong.Web.Features.Household.Passkeys;
using CookAlong.Web.Security;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.Identity;

namespace CookAlong.Web.Features.Household;

/// <summary>Who lives here: host accounts, sign-in, sessions, and who may see what.</summary>
public static class HouseholdFeature
{
    public const string HostPolicy = "Host";
    public const string InRunPolicy = "InRun";

    /// <summary>Of pages that take a secret.</summary>
    public static readonly AddressLimit FormLimit = new("forms", AMinute: 60);

    public const string CookieName = "cookalong";

    /// <summary>Of PBKDF2 with HMAC-SHA-512, at least (OWASP ASVS 5.0.0, appendix C.4; from memory). A password hashed with fewer is hashed anew when it is next given.</summary>
    internal const int HashRounds = 210_000;

    public static IServiceCollection AddHousehold(this IServiceCollection services)
    {
        services.AddSingleton<IPasswordHasher<HostRow>, PasswordHasher<HostRow>>();
        services.Configure<PasswordHasherOptions>(hashing => hashing.IterationCount = HashRounds);
        services.AddSingleton<Accounts>();
        services.AddSingleton<Sessions>();
        services.AddSingleton<FirstStart>();
        services.AddSingleton<WrongTries>();
        services.AddSingleton<Paces>();
        services.AddSingleton<AddressLimits>();
        services.AddScoped<PagePace>();
        services.AddScoped<CircuitHandler>(all => all.GetRequiredService<PagePace>());
        services.AddSingleton<AuditLog>();
        services.AddSingleton<PasskeyChallenges>();
        services.AddSingleton<PasskeyBook>();
        services.AddSingleton<HostInvitations>();
        services.AddSingleton<AccountViews>();
        services.AddHostedService<FirstStartAnnouncement>();

        services.AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme).AddCookie(Cookie);
        services.AddAuthorizationBuilder()
            .AddPolicy(HostPolicy, policy => policy.RequireRole(Visitor.HostRole))
            .AddPolicy(InRunPolicy, policy => policy.RequireAuthenticatedUser().RequireAssertion(MaySeeTheRun));
        services.AddScoped<AuthenticationStateProvider, CircuitSession>();

        services.AddAntiforgery();
        FormsCookie.Use(services);
        return services;
    }

    public static void MapHousehold(this WebApplication app)
    {
        app.MapFirstStart();
        app.MapSignIn();
        app.MapPasskeySignIn();
        app.MapNewHost();
        app.MapAccount();
    }

    /// <summary>The caller's address, as the key of limits.</summary>
    public static string AddressOf(HttpContext http) => http.Connection.RemoteIpAddress?.ToString() ?? "nowhere";

    static void Cookie(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = CookieName;
        options.Cookie.HttpOnly = true;
        // Not Strict: a link to the board sent round the family must find them signed in. Forms carry antiforgery tokens besides.
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.CookieManager = new PrefixedCookies();
        options.ExpireTimeSpan = Sessions.HostLimit;
        options.SlidingExpiration = false;
        options.LoginPath = "/sign-in";
        options.ReturnUrlParameter = SignInEndpoints.ReturnParameter;
        options.Events = new CookieAuthenticationEvents
        {
            OnValidatePrincipal = Sessions.ValidateAsync,
            OnRedirectToLogin = context => Answer(context, StatusCodes.Status401Unauthorized),
            OnRedirectToAccessDenied = context =>
            {
                // The endpoint's own name, not what was asked for: that is anybody's text (OWASP ASVS 5.0.0, 16.3.2 and 16.4.1).
                context.HttpContext.RequestServices.GetRequiredService<ILogger<Visitor>>().LogWarning(
                    "{Person} from {Address} may not open {Endpoint}.",
                    Visitor.Of(context.HttpContext.User)?.Person,
                    AddressOf(context.HttpContext),
                    context.HttpContext.GetEndpoint()?.DisplayName);
                context.Response.StatusCode = StatusCodes.Status403Forbidden;
                return Task.CompletedTask;
            },
        };
    }

    // A person who opens a page is shown the way in; a script is told that it is signed out.
    static Task Answer(Microsoft.AspNetCore.Authentication.RedirectContext<CookieAuthenticationOptions> context, int status)
    {
        if (HttpMethods.IsGet(context.Request.Method) && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase))
        {
            context.Response.Redirect(context.RedirectUri);
        }
        else
        {
            context.Response.StatusCode = status;
        }

        return Task.CompletedTask;
    }

    static bool MaySeeTheRun(AuthorizationHandlerContext context) =>
        context.Resource is HttpContext http
        && Visitor.Of(context.User) is { } visitor
        && Guid.TryParse(Convert.ToString(http.GetRouteValue("run"), CultureInfo.InvariantCulture), out var run)
        && visitor.MaySee(new RunId(run));
}
