using System.CommandLine;
using CookAlong.Web.Data;

namespace CookAlong.Web.Cli;

/// <summary>Brings the database up to date without serving; serve does the same at its start.</summary>
static class MigrateVerb
{
    public static Command Create()
    {
        var data = HouseOptions.Data();
        var backups = HouseOptions.Backups();
        var verb = new Command("migrate", "Bring the database up to date, after backing it up. 'serve' does this by itself. Exit 0 = up to date, 1 = failed (the message names the backup), 2 = bad input.") { data, backups };
        verb.SetAction(async (parsed, stop) =>
        {
            var output = parsed.InvocationConfiguration;
            if (parsed.Settings(new("data", parsed.GetValue(data)), new("backups", parsed.GetValue(backups))) is not { } settings)
            {
                return ExitCode.BadInput;
            }

            await using var services = new ServiceCollection()
                .AddLogging()
                .AddSingleton(TimeProvider.System)
                .AddHouseholdData(settings)
                .BuildServiceProvider();
            try
            {
                var steps = await services.GetRequiredService<Upgrade>().RunAsync(stop);
                await output.Output.WriteLineAsync(steps.Count == 0 ? "The database is up to date." : $"Brought up to date: {string.Join(", ", steps)}.");
                return ExitCode.Done;
            }
            catch (UpgradeException failed)
            {
                await output.Error.WriteLineAsync(failed.Message);
                return ExitCode.Failed;
            }
        });
        return verb;
    }
}
