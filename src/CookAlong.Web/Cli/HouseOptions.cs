using System.CommandLine;

namespace CookAlong.Web.Cli;

/// <summary>Options that several verbs share. None has a default here: settings not given come from the environment, then from <see cref="HouseSettings"/>.</summary>
static class HouseOptions
{
    public static Option<string?> Data() => new("--data")
    {
        Description = "The one folder for everything kept: database, keys, backups. Made when missing. Default ./data. [COOKALONG_DATA]",
        HelpName = "DIR",
    };

    public static Option<string?> Backups() => new("--backups")
    {
        Description = "A folder on another disk for the backups; it must be there. Default: 'backups' within the data folder. [COOKALONG_BACKUPS]",
        HelpName = "DIR",
    };

    public static Option<string?> Hosts() => new("--hosts")
    {
        Description = "Names this server answers to, separated by ',', besides IP addresses and names of the home network (.local, .lan, .home.arpa, ...); * = any. Its certificate of 'https on' is made out to the home's among them, addresses too. [COOKALONG_HOSTS]",
        HelpName = "NAMES",
    };

    public static Option<string?> HttpsPort() => new("--https-port")
    {
        Description = $"Port for HTTPS once 'https on' was run. Default {HouseSettings.DefaultHttpsPort}. [COOKALONG_HTTPS_PORT]",
        HelpName = "PORT",
    };

    /// <summary>The settings a verb runs with; what is wrong with them goes to the error stream.</summary>
    /// <returns>Null when a setting is wrong.</returns>
    public static HouseSettings? Settings(this ParseResult parsed, params IEnumerable<KeyValuePair<string, string?>> given)
    {
        var configuration = new ConfigurationBuilder()
            .AddEnvironmentVariables(HouseSettings.EnvironmentPrefix)
            .AddInMemoryCollection(given.Where(setting => setting.Value is not null))
            .Build();
        var settings = HouseSettings.Read(configuration, out var errors);
        foreach (var error in errors)
        {
            parsed.InvocationConfiguration.Error.WriteLine(error);
        }

        return settings;
    }
}
