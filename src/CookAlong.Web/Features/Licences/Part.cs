using System.Text.Json;

namespace CookAlong.Web.Features.Licences;

/// <summary>Something in this program that others wrote.</summary>
/// <param name="Licence">By its SPDX expression.</param>
/// <param name="Copyright">As its authors say it; "" = they do not.</param>
/// <param name="Sha512">Of the package as it was fetched, base64; null = files that lie in the source tree.</param>
/// <param name="Notice">Where among the server's own files its licence's text lies; null = within the package.</param>
public sealed record Part(string Name, string Version, string Licence, string Copyright, string? Sha512, string? Notice)
{
    /// <summary>How it is named elsewhere (package URL).</summary>
    public string Purl => Sha512 is null ? $"pkg:generic/{Uri.EscapeDataString(Name)}@{Version}" : $"pkg:nuget/{Name}@{Version}";
}

/// <summary>All parts: every package of the lock file, and what lies in the tree. The list is checked in; a test holds it to the lock file.</summary>
public static class Parts
{
    static readonly JsonSerializerOptions asWritten = new(JsonSerializerDefaults.Web);

    /// <summary>By name.</summary>
    public static IReadOnlyList<Part> All()
    {
        using var stream = typeof(Parts).Assembly.GetManifestResourceStream("parts.json")!;
        return JsonSerializer.Deserialize<Part[]>(stream, asWritten)!;
    }
}
