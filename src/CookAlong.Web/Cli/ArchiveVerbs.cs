using System.CommandLine;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using CookAlong.Web.Data.Backups;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Meals;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Cli;

/// <summary>A household moves out, and in: everything it has in one open file.</summary>
static class ArchiveVerbs
{
    // A broken archive may have thousands; the first tell what is wrong.
    const int MostTold = 20;

    public static Command Export()
    {
        var file = new Argument<string>("FILE") { Description = "The archive to write, a zip file; one of that name is replaced." };
        return Create(
            "export",
            "Write everything the household has into one open archive: meals, dishes and their versions, plans, runs, shopping, leftovers, what was learned, settings. No accounts, passwords or keys. Exit 0 = written, 1 = failed, 2 = bad input.",
            file,
            async (services, path, output, stop) =>
            {
                var part = path + ".part";
                int left;
                File.Delete(part);
                Backup.MakeClosed(part);
                await using (var to = new FileStream(part, FileMode.Open, FileAccess.ReadWrite))
                {
                    left = await services.GetRequiredService<HouseholdArchive>().ExportAsync(to, stop);
                }

                File.Move(part, path, overwrite: true);
                await NoteAsync(services, AuditDeed.Exported, path);
                await output.Output.WriteLineAsync($"Everything is in {path}, without accounts, passwords and keys.{(left == 0 ? "" : $" Left out: {MealWords.Many(left, "run that goes on", "runs that go on")}.")}");
                return ExitCode.Done;
            });
    }

    public static Command Import()
    {
        var file = new Argument<string>("FILE") { Description = "An archive that 'export' wrote." };
        return Create(
            "import",
            "Add from an archive what the household does not have yet, after a backup (in PostgreSQL make one yourself first); what it has stays as it is. Exit 0 = added, 1 = failed, 2 = the archive is bad (each bad entry is named) and nothing was added.",
            file,
            async (services, path, output, stop) =>
            {
                if (!File.Exists(path))
                {
                    await output.Error.WriteLineAsync($"There is no file {path}.");
                    return ExitCode.BadInput;
                }

                if (services.GetRequiredService<HouseSettings>().Postgres is null)
                {
                    var backup = services.GetRequiredService<Backup>();
                    backup.To(backup.NextFile("before-import"));
                }

                await using var from = File.OpenRead(path);
                var imported = await services.GetRequiredService<HouseholdArchive>().ImportAsync(from, stop);
                foreach (var bad in imported.Bad.Take(MostTold))
                {
                    await output.Error.WriteLineAsync($"{(bad.Entry.Length == 0 ? path : bad.Entry)}: {bad.Problem}");
                }

                if (imported.Bad.Count > 0)
                {
                    await output.Error.WriteLineAsync($"{MealWords.Many(imported.Bad.Count, "fault", "faults")} in {path}; nothing was added.");
                    return ExitCode.BadInput;
                }

                await NoteAsync(services, AuditDeed.Imported, path);
                await output.Output.WriteLineAsync($"Added: {MealWords.Many(imported.Meals, "meal", "meals")}, {MealWords.Many(imported.Dishes, "dish", "dishes")}, {MealWords.Many(imported.Runs, "run", "runs")}. What was there already stayed as it was.");
                return ExitCode.Done;
            });
    }

    static Task NoteAsync(ServiceProvider services, AuditDeed deed, string path) =>
        new AuditLog(services.GetRequiredService<IDbContextFactory<CookAlongDb>>(), services.GetRequiredService<TimeProvider>()).WriteAsync(deed, OfflineAudit.Who, address: null, Path.GetFileName(path));

    static Command Create(string name, string says, Argument<string> file, Func<ServiceProvider, string, InvocationConfiguration, CancellationToken, Task<int>> act)
    {
        var data = HouseOptions.Data();
        var verb = new Command(name, says) { data, file };
        verb.SetAction(async (parsed, stop) =>
        {
            var output = parsed.InvocationConfiguration;
            if (parsed.Settings(new KeyValuePair<string, string?>("data", parsed.GetValue(data))) is not { } settings)
            {
                return ExitCode.BadInput;
            }

            await using var services = new ServiceCollection()
                .AddLogging()
                .AddSingleton(TimeProvider.System)
                .AddHouseholdData(settings)
                .AddSingleton<HouseholdArchive>()
                .BuildServiceProvider();
            try
            {
                await services.GetRequiredService<Upgrade>().RunAsync(stop);
                return await act(services, Path.GetFullPath(parsed.GetValue(file)!), output, stop);
            }
            catch (Exception failed) when (failed is UpgradeException or BackupException or IOException or UnauthorizedAccessException)
            {
                await output.Error.WriteLineAsync(failed.Message);
                return ExitCode.Failed;
            }
        });
        return verb;
    }
}
