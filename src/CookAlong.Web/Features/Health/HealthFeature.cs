using System.Data.Common;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Health;

/// <summary>For whatever watches the server. Neither says anything about the household.</summary>
static class HealthFeature
{
    /// <summary>What a server says at /health/live.</summary>
    public const string Alive = "alive";

    public static IServiceCollection AddHealth(this IServiceCollection services) => services.AddSingleton(Machine.This).AddSingleton<Checkup>();

    public static void MapHealth(this WebApplication app)
    {
        app.MapGet("/health/live", () => Alive).AllowAnonymous();
        app.MapGet("/health/ready", async (IDbContextFactory<CookAlongDb> databases, ILogger<CookAlongDb> log, CancellationToken stop) =>
        {
            try
            {
                await using var db = await databases.CreateDbContextAsync(stop);
                await db.Hosts.AnyAsync(stop);
                return Results.Text("ready");
            }
            // PostgreSQL's provider wraps what may pass.
            catch (Exception failure) when (failure is DbException || failure.InnerException is DbException)
            {
                log.LogError(failure, "The database does not answer.");
                return Results.Text("not ready", statusCode: StatusCodes.Status503ServiceUnavailable);
            }
        }).AllowAnonymous();
    }
}
