using System.Diagnostics;
using System.Threading.RateLimiting;

namespace CookAlong.Web.Features.Household;

/// <summary>Marks an endpoint that one address may ask so often a minute, counted together with all of the same name.</summary>
public sealed record AddressLimit(string Name, int AMinute);

/// <summary>
/// Answers 429 to an address beyond its <see cref="AddressLimit"/>. Its timer ends with the server; that of the framework's own
/// middleware goes on as long as the process, and holds the server with all it has.
/// </summary>
sealed class AddressLimits : IDisposable
{
    readonly PartitionedRateLimiter<(AddressLimit Limit, string Address)> limiter =
        PartitionedRateLimiter.Create<(AddressLimit Limit, string Address), (AddressLimit Limit, string Address)>(asked => RateLimitPartition.GetFixedWindowLimiter(
            asked, of => new FixedWindowRateLimiterOptions { PermitLimit = of.Limit.AMinute, Window = TimeSpan.FromMinutes(1) }));

    public static void Use(WebApplication app)
    {
        var limits = app.Services.GetRequiredService<AddressLimits>();
        app.Use((http, next) =>
        {
            if (limits.Take(http) is not { Ticks: > 0 } wait)
            {
                return next(http);
            }

            http.Response.StatusCode = StatusCodes.Status429TooManyRequests;
            PaceLimit.SayWhen(http, wait);
            return Task.CompletedTask;
        });
    }

    public void Dispose() => limiter.Dispose();

    /// <returns>Zero = go on; otherwise after so long there is room again.</returns>
    TimeSpan Take(HttpContext http)
    {
        if (http.GetEndpoint()?.Metadata.GetMetadata<AddressLimit>() is not { } limit)
        {
            return TimeSpan.Zero;
        }

        using var lease = limiter.AttemptAcquire((limit, HouseholdFeature.AddressOf(http)));
        return lease.IsAcquired ? TimeSpan.Zero
            : lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait
            : throw new UnreachableException("A fixed window says when it ends.");
    }
}
