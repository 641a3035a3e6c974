using System.CommandLine;
using CookAlong.Web.Features.Health;

namespace CookAlong.Web.Cli;

/// <summary>Says in words how a household's server is and what to do about it.</summary>
static class DoctorVerb
{
    public static Command Create()
    {
        var data = HouseOptions.Data();
        var backups = HouseOptions.Backups();
        var urls = new Option<string?>("--urls") { Description = "Addresses that the server is to listen on. [COOKALONG_URLS]", HelpName = "URL" };
        var reach = new Option<bool>("--reach") { Description = "Also dial the push services of the devices that asked for calls, the web hook and the message broker. Nothing else leaves this machine." };
        var verb = new Command("doctor", "Check folder, disk, database, clock, backups and addresses, and say what to do. It changes nothing. Exit 0 = nothing is to be done, 1 = something is, 2 = bad input.")
        {
            data,
            backups,
            urls,
            reach,
        };
        verb.SetAction(async (parsed, stop) =>
        {
            if (parsed.Settings(new("data", parsed.GetValue(data)), new("backups", parsed.GetValue(backups)), new("urls", parsed.GetValue(urls))) is not { } settings)
            {
                return ExitCode.BadInput;
            }

            var exit = ExitCode.Done;
            await foreach (var finding in new Checkup(settings, TimeProvider.System, Machine.This).RunAsync(isServing: false, parsed.GetValue(reach), stop))
            {
                await parsed.InvocationConfiguration.Output.WriteLineAsync($"{HealthPanel.Word(finding.Grade),-7}  {finding.Of}: {finding.Says}");
                exit = finding.Grade == Grade.Wrong ? ExitCode.Failed : exit;
            }

            return exit;
        });
        return verb;
    }
}
