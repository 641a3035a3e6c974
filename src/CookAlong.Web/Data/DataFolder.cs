using System.Diagnostics.CodeAnalysis;

namespace CookAlong.Web.Data;

/// <summary>
/// Who is at work in a data folder: any number that only use the database, or one alone that puts another in its place.
/// The operating system lets go of it when a process dies, however it dies.
/// </summary>
static class DataFolder
{
    /// <summary>Bytes that must be free for a start: SQLite's own files beside the database, and the first taps.</summary>
    const int LeastRoom = 256 * 1024;

    // The system's own numbers (errno of Linux and macOS; Windows' code).
    const int NoSpace = 28;
    const int NoSpaceOnWindows = unchecked((int)0x80070070);
    const int ReadOnly = 30;

    /// <summary>Makes the folder where it is missing, and sees that it can be written.</summary>
    /// <exception cref="UpgradeException">Names the folder and the remedy.</exception>
    public static void Open(HouseSettings settings)
    {
        try
        {
            HouseholdData.OpenFolder(settings.Data);
            if (settings.Postgres is null)
            {
                Directory.CreateDirectory(settings.Keys);
            }

            using var probe = new FileStream(Path.Combine(settings.Data, $"write-probe-{Path.GetRandomFileName()}"), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
            // A household in PostgreSQL keeps nothing here that grows.
            probe.Write(new byte[settings.Postgres is null ? LeastRoom : 0]);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            var why = failure.HResult switch
            {
                NoSpace or NoSpaceOnWindows => $"its disk is full. Make room there, {LeastRoom / 1024} KB at the least",
                ReadOnly => "its disk is read-only. The system's log says why; have it mounted for writing",
                _ => $"{failure.Message.TrimEnd('.')}. Give it to the user that the server runs as",
            };
            throw new UpgradeException($"The data folder {settings.Data} cannot be written: {why}, and start again. Nothing was changed.", failure);
        }
    }

    /// <summary>To use what is there.</summary>
    /// <param name="refusal">What stands in the way, and what to do.</param>
    public static bool TryShare(HouseSettings settings, [NotNullWhen(true)] out IDisposable? held, [NotNullWhen(false)] out string? refusal)
    {
        held = Take(settings, FileAccess.Read, FileShare.ReadWrite);
        refusal = held is null ? $"A restore is going on in {settings.Data} ({settings.InUse} is held). Start again when it is done." : null;
        return held is not null;
    }

    /// <summary>To put another database in the place of the one that is there.</summary>
    /// <param name="refusal">What stands in the way, and what to do.</param>
    public static bool TryAlone(HouseSettings settings, [NotNullWhen(true)] out IDisposable? held, [NotNullWhen(false)] out string? refusal)
    {
        held = Take(settings, FileAccess.ReadWrite, FileShare.None);
        refusal = held is null ? $"A server or another command is at work in {settings.Data} ({settings.InUse} is held). Stop it, and try again. Nothing was changed." : null;
        return held is not null;
    }

    static FileStream? Take(HouseSettings settings, FileAccess access, FileShare share)
    {
        try
        {
            return new FileStream(settings.InUse, FileMode.OpenOrCreate, access, share);
        }
        catch (IOException) when (File.Exists(settings.InUse))
        {
            return null;
        }
    }
}
