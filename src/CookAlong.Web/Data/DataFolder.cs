using System.Diagnostics.CodeAnalysis;

namespace CookAlong.Web.Data;

/// <summary>
/// Who is at work in a data folder: any number that only use the database, or one alone that puts another in its place.
/// The operating system lets go of it when a process dies, however it dies.
/// </summary>
static class DataFolder
{
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
