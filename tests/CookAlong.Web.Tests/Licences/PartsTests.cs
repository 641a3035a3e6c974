using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Xml.Linq;
using CookAlong.Web.Cli;
using CookAlong.Web.Features.Licences;
using CookAlong.Web.Tests.Architecture;

namespace CookAlong.Web.Tests.Licences;

/// <summary>The list of what others wrote is the lock file's. After a change to it, run these with COOKALONG_PARTS=1, which writes the list anew.</summary>
public sealed class PartsTests
{
    static readonly CancellationToken stop = TestContext.Current.CancellationToken;

    static readonly JsonSerializerOptions readable = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.Never,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>What the household may be given without asking anybody.</summary>
    static readonly string[] allowed = ["MIT", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "ISC", "OFL-1.1", "PostgreSQL", "MS-PL OR Apache-2.0", "MIT OR Apache-2.0"];

    static string Tree => Path.Combine(Sources.Root, "src/CookAlong.Web");

    [Fact]
    public void Every_package_of_the_lock_file_is_listed_as_it_is_locked()
    {
        if (Environment.GetEnvironmentVariable("COOKALONG_PARTS") == "1")
        {
            Write();
            return;
        }

        Assert.Equal(
            Locked().Select(one => $"{one.Name} {one.Version} {one.Hash}").Order(StringComparer.Ordinal),
            Parts.All().Where(part => part.Sha512 is not null).Select(part => $"{part.Name} {part.Version} {part.Sha512}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_file_of_others_in_the_tree_is_listed_with_the_text_of_its_licence()
    {
        var notices = Directory.EnumerateFiles(Path.Combine(Tree, "wwwroot"), "*LICENSE.txt", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(Path.Combine(Tree, "wwwroot"), file));
        var folders = Directory.EnumerateDirectories(Path.Combine(Tree, "wwwroot/lib"));

        Assert.Equal(notices.Select(file => "/" + file).Order(StringComparer.Ordinal), Parts.All().Select(part => part.Notice).OfType<string>().Order(StringComparer.Ordinal));
        Assert.All(folders, folder => Assert.True(File.Exists(Path.Combine(folder, "LICENSE.txt")), folder));
        // The version stands in the notice's first line where the file's author has one.
        Assert.All(Parts.All().Where(part => part.Notice?.StartsWith("/lib/", StringComparison.Ordinal) == true), part =>
            Assert.EndsWith($" {part.Version}", File.ReadLines(Path.Combine(Tree, "wwwroot" + part.Notice)).First(), StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_shipped_under_terms_that_a_household_would_have_to_ask_about() =>
        Assert.All(Parts.All(), part => Assert.Contains(part.Licence, allowed));

    [Fact]
    public async Task The_bill_of_materials_names_every_part()
    {
        using var words = new StringWriter();

        Assert.Equal(ExitCode.Done, await CommandLine.RunAsync(["sbom"], new InvocationConfiguration { Output = words }));

        var bill = JsonElement.Parse(words.ToString());
        Assert.Equal("CycloneDX", bill.GetProperty("bomFormat").GetString());
        var components = bill.GetProperty("components").EnumerateArray().ToArray();
        Assert.Equal(Parts.All().Select(part => part.Purl), components.Select(one => one.GetProperty("purl").GetString()));
        Assert.All(components.Where(one => one.TryGetProperty("hashes", out _)), one => Assert.Equal(128, one.GetProperty("hashes")[0].GetProperty("content").GetString()!.Length));
    }

    [Fact]
    public async Task A_host_reads_the_licences()
    {
        await using var house = new AppFactory();

        var page = await (await house.HostAsync()).ReadAsync("/licences");

        Assert.All(Parts.All(), part => Assert.Contains($"<td>{part.Name}</td>", page, StringComparison.Ordinal));
    }

    static IEnumerable<(string Name, string Version, string Hash)> Locked() =>
        JsonElement.Parse(File.ReadAllText(Path.Combine(Tree, "packages.lock.json"))).GetProperty("dependencies").GetProperty("net10.0").EnumerateObject()
            .Where(one => one.Value.GetProperty("type").GetString() != "Project" && !IsOfBuild(one.Name))
            .Select(one => (one.Name, one.Value.GetProperty("resolved").GetString()!, one.Value.GetProperty("contentHash").GetString()!));

    /// <summary>Looked at by the compiler, and in no program.</summary>
    static bool IsOfBuild(string package) => package.EndsWith("Analyzers", StringComparison.Ordinal) || package == "Microsoft.AspNetCore.App.Internal.Assets";

    static void Write()
    {
        var kept = Parts.All().Where(part => part.Sha512 is null);
        var packages = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget/packages");
        var locked = Locked().Select(one =>
        {
            var folder = Path.Combine(packages, one.Name.ToLowerInvariant(), one.Version);
            var about = XDocument.Load(Directory.EnumerateFiles(folder, "*.nuspec").Single()).Descendants().ToLookup(element => element.Name.LocalName);
            var licence = about["license"].Single();
            // A licence that is a file is read by whoever adds the package.
            var name = licence.Attribute("type")!.Value == "expression" ? licence.Value : one.Name == "MQTTnet" ? "MIT" : throw new InvalidOperationException($"Read the licence of {one.Name}.");
            return new Part(one.Name, one.Version, name, about["copyright"].FirstOrDefault()?.Value.Trim() ?? about["authors"].First().Value.Trim(), one.Hash, Notice: null);
        });
        File.WriteAllText(Path.Combine(Tree, "Features/Licences/parts.json"), JsonSerializer.Serialize(kept.Concat(locked).OrderBy(part => part.Name, StringComparer.OrdinalIgnoreCase), readable) + "\n");
    }
}
