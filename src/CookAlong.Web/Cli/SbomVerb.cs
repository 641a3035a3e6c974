using System.CommandLine;
using System.Reflection;
using System.Text.Json;
using CookAlong.Web.Features.Licences;

namespace CookAlong.Web.Cli;

/// <summary>Writes what the program is made of (CycloneDX 1.6). The same program always writes the same.</summary>
static class SbomVerb
{
    static readonly JsonSerializerOptions readable = new() { WriteIndented = true };

    public static Command Create()
    {
        var file = new Argument<string?>("FILE") { Description = "Where to write it. Default: the terminal.", Arity = ArgumentArity.ZeroOrOne };
        var sbom = new Command("sbom", "Write the bill of materials: every package with version, licence and hash, as CycloneDX JSON.") { file };
        sbom.SetAction(async (parsed, stop) =>
        {
            var bill = Bill();
            if (parsed.GetValue(file) is not { } path)
            {
                await parsed.InvocationConfiguration.Output.WriteLineAsync(bill);
                return ExitCode.Done;
            }

            try
            {
                await File.WriteAllTextAsync(path, bill, stop);
                return ExitCode.Done;
            }
            catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
            {
                await parsed.InvocationConfiguration.Error.WriteLineAsync($"\"{path}\" cannot be written: {failed.Message} Name a file in a folder that is there.");
                return ExitCode.Failed;
            }
        });
        return sbom;
    }

    static string Bill() => JsonSerializer.Serialize(
        new
        {
            bomFormat = "CycloneDX",
            specVersion = "1.6",
            version = 1,
            metadata = new { component = new { type = "application", name = "CookAlong", version = Version, licenses = new[] { new { expression = "MIT" } } } },
            components = Parts.All().Select(Component),
        },
        readable);

    static Dictionary<string, object> Component(Part part)
    {
        var component = new Dictionary<string, object>
        {
            ["type"] = "library",
            ["bom-ref"] = part.Purl,
            ["name"] = part.Name,
            ["version"] = part.Version,
            ["purl"] = part.Purl,
            ["licenses"] = new[] { new { expression = part.Licence } },
        };
        if (part.Copyright.Length > 0)
        {
            component["copyright"] = part.Copyright;
        }

        if (part.Sha512 is { } hash)
        {
            component["hashes"] = new[] { new { alg = "SHA-512", content = Convert.ToHexStringLower(Convert.FromBase64String(hash)) } };
        }

        return component;
    }

    static string Version => typeof(SbomVerb).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];
}
