using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;

namespace CookAlong.Web.Data.Archive;

/// <summary>
/// What stands where in a household's archive, a zip file: the manifest; each meal, plan and dish as the file that it is; each
/// run's log; and what is left as tables of rows. Described in DEVELOPERS.md. Names never change within a format.
/// </summary>
static partial class ArchiveLayout
{
    public const string Format = "cookalong-household/1";
    public const string Manifest = "manifest.json";

    public static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        RespectNullableAnnotations = true,
        Converters = { new JsonStringEnumConverter() },
    };

    public static string Table(string name) => $"tables/{name}.json";

    public static string Meal(Guid id) => $"meals/{id}.json";

    public static string Plan(Guid id) => $"plans/{id}.json";

    public static string Dish(Guid id, int version) => $"dishes/{id}/{version}.json";

    public static string Run(Guid id) => $"runs/{id}.json";

    /// <summary>Base64: an archive is text throughout.</summary>
    public static string Photo(Guid id) => $"photos/{id}.txt";

    /// <summary>False for every name that no export writes: a path that climbs out, a folder, another program's file.</summary>
    public static bool IsOurs(string name) => Names().IsMatch(name);

    [GeneratedRegex(@"\A(manifest\.json|tables/[a-z]+\.json|(meals|plans|runs)/[0-9a-f-]{36}\.json|photos/[0-9a-f-]{36}\.txt|dishes/[0-9a-f-]{36}/[1-9][0-9]{0,8}\.json)\z")]
    private static partial Regex Names();
}

/// <summary>The archive's first entry.</summary>
/// <param name="Schema">The last migration of the database it was made from.</param>
sealed record ArchiveManifest(string Format, DateTimeOffset Made, string Schema, int Meals, int Dishes, int Runs);
