using System.Text.RegularExpressions;
using CookAlong.Web.Tests.Architecture;

namespace CookAlong.Web.Tests.Api;

/// <summary>The written contract of the live line names what the line knows, and nothing else.</summary>
public sealed partial class LineContractTests
{
    static string Contract { get; } = File.ReadAllText(Path.Combine(Sources.Root, "DEVELOPERS.md")).Split("## The live line")[1].Split("\n## ")[0];

    [Fact]
    public void Every_command_is_in_the_table()
    {
        var known = Kinds(File.ReadAllText(Path.Combine(Sources.Root, "src/CookAlong.Web/Features/Live/Line/WireCommand.cs"))).Append("addDish").Distinct().Order().ToArray();
        var told = Contract.Split("### Commands")[1].Split('\n').Where(line => line.StartsWith("| `", StringComparison.Ordinal)).SelectMany(line => Told().Matches(line.Split('|')[1])).Select(one => one.Groups[1].Value).Order();
        Assert.True(known.Length > 30);

        Assert.Equal(known, told);
    }

    [Fact]
    public void Every_message_to_the_screens_is_in_the_table()
    {
        var sent = Sources.Files("src/CookAlong.Web/Features", "*.cs").SelectMany(file => Sent().Matches(File.ReadAllText(file))).Select(one => one.Groups[1].Value).Distinct().ToArray();
        Assert.Contains("Changed", sent);

        Assert.All(sent, message => Assert.Contains($"| `{message}", Contract, StringComparison.Ordinal));
    }

    static IEnumerable<string> Kinds(string source) => Kind().Matches(source.Split("switch")[1].Split("_ => null")[0]).Select(one => one.Groups[1].Value);

    [GeneratedRegex("^ +\"([a-zA-Z]+)\" =>", RegexOptions.Multiline)]
    private static partial Regex Kind();

    [GeneratedRegex("`([a-zA-Z]+)`")]
    private static partial Regex Told();

    // The message's name is written there, or is a constant of the same name.
    [GeneratedRegex("(?:SendAsync\\(\"|Send\\([a-zA-Z.]+, \"?)([A-Z][a-zA-Z]+)")]
    private static partial Regex Sent();
}
