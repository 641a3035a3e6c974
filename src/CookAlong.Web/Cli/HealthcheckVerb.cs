using System.CommandLine;

namespace CookAlong.Web.Cli;

/// <summary>Asks a running server whether it is ready: for containers, which carry no tool that could.</summary>
static class HealthcheckVerb
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static Command Create()
    {
        var url = new Option<string>("--url")
        {
            Description = "The server's own address. Default http://localhost:5080",
            HelpName = "URL",
            DefaultValueFactory = _ => HouseSettings.DefaultUrls,
        };
        var verb = new Command("healthcheck", "Ask a running server whether it is ready. Exit 0 = ready, 1 = not.") { url };
        verb.SetAction(async (parsed, stop) =>
        {
            using var client = new HttpClient { Timeout = Patience };
            try
            {
                using var answer = await client.GetAsync(new Uri(new Uri(parsed.GetValue(url)!), "/health/ready"), stop);
                await parsed.InvocationConfiguration.Output.WriteLineAsync($"{(int)answer.StatusCode}");
                return answer.IsSuccessStatusCode ? ExitCode.Done : ExitCode.Failed;
            }
            catch (Exception failure) when (failure is HttpRequestException or TaskCanceledException)
            {
                await parsed.InvocationConfiguration.Error.WriteLineAsync($"No answer from {parsed.GetValue(url)}: {failure.Message}");
                return ExitCode.Failed;
            }
        });
        return verb;
    }
}
