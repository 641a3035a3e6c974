using System.Runtime.CompilerServices;
using CookAlong.Web.Security;

namespace CookAlong.Web.Features.Health;

/// <summary>Looks at everything about a server that a household would rather hear of before it loses something.</summary>
sealed class Checkup(HouseSettings settings, TimeProvider time, Machine machine)
{
    /// <param name="isServing">Asked by the server itself, which has its addresses.</param>
    /// <param name="reach">Also dial the ways out of the house: the only check that leaves this machine.</param>
    public async IAsyncEnumerable<Finding> RunAsync(bool isServing, bool reach, [EnumeratorCancellation] CancellationToken stop)
    {
        var place = new PlaceChecks(settings, machine);
        yield return place.Permissions();
        if (settings.Postgres is null)
        {
            yield return place.FileSystem();
        }

        if (Directory.Exists(settings.Data))
        {
            yield return place.Disk();
        }

        var ways = new WayChecks(settings, machine);
        if (settings.Postgres is { } address)
        {
            yield return await PostgresCheck.RunAsync(address, stop);
            yield return HealthWords.BackupsOfPostgres;
        }
        else if (File.Exists(settings.Database))
        {
            await using var database = new DatabaseChecks(settings, time);
            yield return await database.SoundnessAsync(stop);
            if (database.CanBeAsked)
            {
                yield return await database.SchemaAsync(stop);
                yield return await database.ClockAsync(stop);
                yield return await database.BackupAsync(stop);
            }

            if (reach && database.CanBeAsked)
            {
                var outward = ways.Outward(await database.PushAddressesAsync(stop));
                if (outward.Count == 0)
                {
                    yield return HealthWords.NothingToReach;
                }

                foreach (var (host, port, isPublic) in outward)
                {
                    yield return HealthWords.Reached(host, await machine.WhyNotReached(host, port, isPublic, stop));
                }
            }
        }
        else
        {
            yield return HealthWords.NoDatabase(settings.Data, File.Exists(settings.Restoring));
        }

        yield return HealthWords.Https(AuthorityFiles.IsThere(settings), settings.IsHttpsOnly);
        foreach (var url in isServing ? [] : ways.Listening())
        {
            yield return await ways.AddressAsync(url, stop);
        }
    }
}
