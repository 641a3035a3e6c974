using System.CommandLine;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Cli;

/// <summary>Puts a backup in the place of the household's database, which is kept.</summary>
static class RestoreVerb
{
    public static Command Create()
    {
        var data = HouseOptions.Data();
        var file = new Argument<string>("FILE") { Description = "A backup: a copy of a household's database. It stays as it is." };
        var verb = new Command(
            "restore",
            "Put a backup in the place of the database, after checking it; stop the server first. The database that was there is kept, with the time in its name. Exit 0 = restored, 1 = not, since somebody uses the data or a disk failed, 2 = FILE is no sound backup or another input is bad. After 1 and 2 the household is as it was.")
        {
            data,
            file,
        };
        verb.SetAction(async (parsed, stop) =>
        {
            var output = parsed.InvocationConfiguration;
            var from = Path.GetFullPath(parsed.GetValue(file)!);
            if (parsed.Settings(new KeyValuePair<string, string?>("data", parsed.GetValue(data))) is not { } settings)
            {
                return ExitCode.BadInput;
            }

            if (settings.Postgres is not null)
            {
                await output.Error.WriteLineAsync(BackupWords.OfPostgres);
                return ExitCode.BadInput;
            }

            if (!File.Exists(from) || from == settings.Database)
            {
                await output.Error.WriteLineAsync(from == settings.Database ? $"{from} is the household's own database. Name a backup." : $"There is no file {from}.");
                return ExitCode.BadInput;
            }

            HouseholdData.OpenFolder(settings.Data);
            if (!DataFolder.TryAlone(settings, out var held, out var refusal))
            {
                await output.Error.WriteLineAsync(refusal);
                return ExitCode.Failed;
            }

            using (held)
            {
                return await RunAsync(settings, from, output, stop);
            }
        });
        return verb;
    }

    static string Keys(bool? fit) => fit switch
    {
        true => "The keys fit: whoever was signed in when the backup was made is signed in again.",
        false => "The keys are others than when the backup was made: everybody signs in again, and thermometers that post by themselves get new addresses.",
        null => "Whether the keys fit is not known, since the backup has no manifest beside it; where they do not, everybody signs in again.",
    };

    static async Task<int> RunAsync(HouseSettings settings, string from, InvocationConfiguration output, CancellationToken stop)
    {
        try
        {
            var (kept, keysFit) = await new Restore(settings, TimeProvider.System).FromAsync(from, stop);
            await OfflineAudit.WriteAsync(settings, TimeProvider.System, AuditDeed.Restored, Path.GetFileName(from));
            await output.Output.WriteLineAsync($"Restored from {from}. {(kept is null ? "There was no database before." : $"The database that was there is kept in {kept}; remove it when all is well.")} Start the server; it brings an older backup up to date by itself.");
            await output.Output.WriteLineAsync(Keys(keysFit));
            return ExitCode.Done;
        }
        catch (RestoreException refused)
        {
            await output.Error.WriteLineAsync(refused.Message);
            return ExitCode.BadInput;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            await output.Error.WriteLineAsync($"The backup was not restored: {failure.Message} Look at the disk's space and permissions, and run this again.");
            return ExitCode.Failed;
        }
    }
}
