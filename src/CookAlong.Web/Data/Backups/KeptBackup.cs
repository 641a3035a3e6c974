using System.Globalization;

namespace CookAlong.Web.Data.Backups;

/// <summary>A backup in the folder for backups, known by its name.</summary>
/// <param name="Manifest">Null = it has none, and nothing is known of its soundness.</param>
sealed record KeptBackup(string File, DateTimeOffset Made, string Why, BackupManifest? Manifest)
{
    public const string Daily = "daily";

    const string Start = "cookalong-";
    const string Time = "yyyyMMdd'T'HHmmss'Z'";

    // As long as its letters: 20261220T030000Z.
    const int TimeLength = 16;

    public static string FileOf(string folder, DateTimeOffset made, string why) =>
        Path.Combine(folder, $"{Start}{made.UtcDateTime.ToString(Time, CultureInfo.InvariantCulture)}-{why}.db");

    /// <summary>Those in a folder, the newest first. Other files are passed over.</summary>
    public static IReadOnlyList<KeptBackup> AllIn(string folder) => Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder, $"{Start}*.db").Select(Of).OfType<KeptBackup>().OrderByDescending(backup => backup.Made)]
        : [];

    /// <summary>The newest that passed its check when it was made and is as long as it was then; null when there is none.</summary>
    public static KeptBackup? LastGoodIn(string folder) =>
        AllIn(folder).FirstOrDefault(backup => backup.Manifest is { } manifest && new FileInfo(backup.File).Length == manifest.Bytes);

    public void Delete()
    {
        System.IO.File.Delete(File);
        System.IO.File.Delete(BackupManifest.FileOf(File));
    }

    static KeptBackup? Of(string file)
    {
        var name = Path.GetFileNameWithoutExtension(file)[Start.Length..];
        return name.Length > TimeLength + 1
            && name[TimeLength] == '-'
            && DateTimeOffset.TryParseExact(name[..TimeLength], Time, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var made)
                ? new KeptBackup(file, made, name[(TimeLength + 1)..], BackupManifest.Read(file))
                : null;
    }
}
