using System.Text.RegularExpressions;
using CookAlong.Web.Tests.Architecture;

namespace CookAlong.Web.Tests.Household;

/// <summary>The table "ASVS 5.0, level 2" of DEVELOPERS.md answers for each requirement that bites here (OWASP ASVS 5.0.0; numbers as printed), and names nothing that is not there.</summary>
public sealed partial class YardstickTests
{
    const string Applicable = """
        1.2.1 1.2.2 1.2.4 1.2.10 1.3.1 1.3.6 1.5.1
        2.2.1 2.2.2 2.3.3 2.3.4 2.4.1
        3.2.1 3.2.2 3.3.1 3.3.2 3.3.3 3.3.4 3.4.1 3.4.3 3.4.4 3.4.6 3.5.1 3.5.3 3.7.2
        4.1.3 4.4.1 4.4.2 4.4.3 4.4.4
        5.1.1 5.2.1 5.2.2 5.2.3 5.3.2 5.4.1 5.4.2
        6.1.1 6.2.1 6.2.4 6.3.1 6.3.2 6.3.3 6.4.1 6.5.1 6.5.2 6.5.3 6.5.4 6.5.5 6.6.3
        7.2.1 7.2.2 7.2.3 7.2.4 7.3.1 7.3.2 7.4.1 7.4.2 7.4.5 7.5.2
        8.2.1 8.2.2 8.2.3 8.3.1 8.4.1
        11.4.2 11.5.1
        12.1.1 12.2.1 12.2.2
        13.2.4 13.2.5 13.4.2 13.4.5
        14.2.1
        15.1.2 15.3.1 15.3.2 15.3.3 15.3.4 15.4.2
        16.3.1 16.3.2 16.4.1 16.5.1 16.5.2 16.5.3
        """;

    /// <summary>A publicly trusted certificate and a second factor: what a home does without, said openly.</summary>
    static readonly string[] OpenlyNotMet = ["6.3.3", "12.2.2"];

    static IReadOnlyList<(string[] Numbers, string MetBy)> Rows { get; } =
    [
        .. File.ReadAllText(Path.Combine(Sources.Root, "DEVELOPERS.md")).Split("## ASVS 5.0, level 2")[1].Split('\n')
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal) && char.IsAsciiDigit(line[2]))
            .Select(line => line.Split('|')).Select(cells => (Number().Matches(cells[1]).Select(match => match.Value).ToArray(), cells[2])),
    ];

    [Fact]
    public void Every_requirement_that_applies_has_one_row() =>
        Assert.Equal(Applicable.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Append("7.5.1").Order(), Rows.SelectMany(row => row.Numbers).Order());

    [Fact]
    public void Nothing_but_the_two_that_are_said_openly_is_not_met() =>
        Assert.Equal(OpenlyNotMet, Rows.Where(row => row.MetBy.Contains("not met", StringComparison.OrdinalIgnoreCase)).SelectMany(row => row.Numbers));

    [Fact]
    public void Every_test_and_source_that_the_table_names_is_there()
    {
        var files = Directory.EnumerateFiles(Path.Combine(Sources.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(Path.Combine(Sources.Root, "tests"), "*.cs", SearchOption.AllDirectories))
            .Select(file => file.Replace('\\', '/')).ToList();
        var named = Rows.SelectMany(row => Named().Matches(row.MetBy)).Select(match => match.Groups[1].Value).Distinct().ToList();
        Assert.True(named.Count > 20);

        Assert.All(named, name => Assert.Contains(files, file => file.EndsWith($"/{(name.EndsWith(".cs", StringComparison.Ordinal) ? name : name + ".cs")}", StringComparison.Ordinal)));
    }

    [GeneratedRegex(@"\b\d+\.\d+\.\d+\b")]
    private static partial Regex Number();

    [GeneratedRegex(@"`([A-Za-z/]+(?:Tests|Contract|\.cs))`")]
    private static partial Regex Named();
}
