using System.IO.Compression;
using System.Text;

namespace CookAlong.Web.Data.Archive;

/// <param name="Entry">Its name in the archive; "" = the archive as a whole.</param>
public sealed record BadEntry(string Entry, string Problem);

/// <summary>The entries' texts. Sizes are counted as they come out, since what a zip file says of itself may be a lie; nothing is written to the disk.</summary>
static class ArchiveEntries
{
    // A large household: a dinner a day for some years is a few thousand entries, 10 to 100 KB each.
    public const int MostEntries = 50_000;
    public const long LargestEntry = 16 << 20;
    public const long LargestAll = 512L << 20;

    /// <returns>Null when anything is wrong with the archive as such.</returns>
    public static async Task<Dictionary<string, string>?> ReadAsync(Stream archive, List<BadEntry> bad, CancellationToken stop)
    {
        try
        {
            await using var zip = await ZipArchive.CreateAsync(archive, ZipArchiveMode.Read, leaveOpen: true, entryNameEncoding: Encoding.UTF8, stop);
            return await ReadAsync(zip, bad, stop);
        }
        catch (InvalidDataException failure)
        {
            bad.Add(new("", $"This is not a zip file that can be read: {failure.Message}"));
            return null;
        }
    }

    static async Task<Dictionary<string, string>?> ReadAsync(ZipArchive zip, List<BadEntry> bad, CancellationToken stop)
    {
        if (zip.Entries.Count > MostEntries)
        {
            bad.Add(new("", $"It holds {zip.Entries.Count} entries; at most {MostEntries} are read."));
            return null;
        }

        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        var left = LargestAll;
        foreach (var entry in zip.Entries)
        {
            if (!ArchiveLayout.IsOurs(entry.FullName))
            {
                bad.Add(new(entry.FullName, "No export writes an entry of this name."));
            }
            else if (await TextAsync(entry, Math.Min(LargestEntry, left), stop) is not { } text)
            {
                bad.Add(new(entry.FullName, $"It is larger than {LargestEntry >> 20} MB, or all entries together than {LargestAll >> 20} MB."));
                return null;
            }
            else if (!texts.TryAdd(entry.FullName, text))
            {
                bad.Add(new(entry.FullName, "It is there twice."));
            }
            else
            {
                left -= text.Length;
            }
        }

        return bad.Count == 0 ? texts : null;
    }

    /// <returns>Null when it is larger than it may be.</returns>
    static async Task<string?> TextAsync(ZipArchiveEntry entry, long most, CancellationToken stop)
    {
        await using var stream = await entry.OpenAsync(stop);
        using var text = new MemoryStream();
        var buffer = new byte[81920];
        for (int read; (read = await stream.ReadAsync(buffer, stop)) > 0;)
        {
            if (text.Length + read > most)
            {
                return null;
            }

            text.Write(buffer, 0, read);
        }

        return Encoding.UTF8.GetString(text.GetBuffer(), 0, (int)text.Length);
    }
}
