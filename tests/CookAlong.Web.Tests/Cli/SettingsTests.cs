using CookAlong.Web.Cli;
using CookAlong.Web.Tests.Architecture;
using Microsoft.Extensions.Configuration;

namespace CookAlong.Web.Tests.Cli;

public sealed class SettingsTests
{
    /// <summary>A setting by its key, a value that is wrong, and what the remedy must name.</summary>
    [Theory]
    [InlineData("data", " ", "Name a folder")]
    [InlineData("urls", "localhost", "http://")]
    [InlineData("urls", "ftp://localhost:21", "http://")]
    [InlineData("https_port", "0", "1 to 65535")]
    [InlineData("https_port", "65536", "1 to 65535")]
    [InlineData("https_port", "5443a", "1 to 65535")]
    [InlineData("https_only", "true", "yes or no")]
    [InlineData("hsts_subdomains", "1", "yes or no")]
    [InlineData("recipe_sites", "https://recipes.example.org", "recipes.example.org")]
    [InlineData("proxies", "192.168.1", "IP addresses or networks")]
    [InlineData("proxies", "10.0.0.0/33", "IP addresses or networks")]
    [InlineData("base_path", "kitchen", "/kitchen")]
    [InlineData("base_path", "/my kitchen", "/kitchen")]
    [InlineData("base_path", "/api", "Choose another")]
    [InlineData("webhook", "speakers.local/hook", "http://")]
    [InlineData("webhook", "mqtt://speakers.local", "http://")]
    [InlineData("mqtt", "http://broker.local/topic", "mqtt://")]
    [InlineData("otlp", "localhost:4318", "http://localhost:4318")]
    [InlineData("mqtt_file", "/no/such/file", "Name a file")]
    [InlineData("postgres", "db.local:5432", "Host=")]
    [InlineData("postgres", "Host=db.local", "Database=")]
    [InlineData("postgres_file", "/no/such/file", "Name a file")]
    [InlineData("redis", "localhost:6379", "--postgres")]
    public void A_wrong_setting_is_told_in_a_sentence_with_its_name_and_the_remedy(string key, string value, string remedy)
    {
        var settings = HouseSettings.Read(new ConfigurationBuilder().AddInMemoryCollection([new(key, value)]).Build(), out var errors);

        Assert.Null(settings);
        var sentence = Assert.Single(errors);
        Assert.Contains(HouseSettings.EnvironmentPrefix + key.ToUpperInvariant(), sentence, StringComparison.Ordinal);
        Assert.Contains(remedy, sentence, StringComparison.Ordinal);
        Assert.EndsWith(".", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_readme_names_every_setting_of_the_server_and_no_other()
    {
        var options = CommandLine.Root().Subcommands.Single(verb => verb.Name == "serve").Options.Where(option => !option.Hidden && option.Name != "--help").Select(option => option.Name).ToArray();
        var rows = File.ReadAllText(Path.Combine(Sources.Root, "README.md")).Split("### Settings")[1].Split("\n\n")[2].Split('\n')[2..].Select(line => line.Split('|')).ToArray();
        Assert.True(options.Length > 8);

        Assert.Equal(options.Order(), rows.Select(row => row[1].Trim(' ', '`')).Where(name => name.Length > 0).Order());
        Assert.All(rows.Where(row => row[1].Trim().Length > 0), row =>
            Assert.StartsWith($"`COOKALONG_{row[1].Trim(' ', '`')[2..].Replace('-', '_').ToUpperInvariant()}`", row[2].Trim(), StringComparison.Ordinal));
    }
}
