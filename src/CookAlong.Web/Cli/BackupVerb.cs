using System.CommandLine;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Backups;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Cli;

/// <summary>Copies the household's database while it is in use.</summary>
static class BackupVerb
{
    public static Command Create()
    {
        var data = HouseOptions.Data();
        var backups = HouseOptions.Backups();
        var file = new Argument<string?>("FILE")
        {
            Description = "Where the copy goes; a file of that name is replaced. Default: a new file in the folder for backups.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var verb = new Command("backup", "Copy the database safely while the household cooks, and check the copy. Exit 0 = a sound copy exists, 1 = none, 2 = bad input.")
        {
            data,
            backups,
            file,
        };
        verb.SetAction(async (parsed, stop) =>
        {
            var output = parsed.InvocationConfiguration;
            if (parsed.Settings(new("data", parsed.GetValue(data)), new("backups", parsed.GetValue(backups))) is not { } settings)
            {
                return ExitCode.BadInput;
            }

            if (settings.Postgres is not null)
            {
                await output.Error.WriteLineAsync(BackupWords.OfPostgres);
                return ExitCode.BadInput;
            }

            if (!File.Exists(settings.Database))
            {
                await output.Error.WriteLineAsync($"There is no household in {settings.Data}. Name its folder with --data.");
                return ExitCode.BadInput;
            }

            if (!DataFolder.TryShare(settings, out var held, out var refusal))
            {
                await output.Error.WriteLineAsync(refusal);
                return ExitCode.Failed;
            }

            using var inUse = held;
            var backup = new Backup(settings, TimeProvider.System);
            var copy = parsed.GetValue(file) ?? backup.NextFile("by-hand");
            try
            {
                backup.To(copy);
            }
            catch (BackupException failed)
            {
                await output.Error.WriteLineAsync(failed.Message);
                return ExitCode.Failed;
            }

            await OfflineAudit.WriteAsync(settings, TimeProvider.System, AuditDeed.BackupMade, Path.GetFileName(copy));
            await output.Output.WriteLineAsync($"A sound copy is in {copy}. What is known of it stands beside it, in {Path.GetFileName(BackupManifest.FileOf(copy))}. It holds everything but the keys; keep it as safe as the original.");
            return ExitCode.Done;
        });
        return verb;
    }
}
