namespace CookAlong.Web.Features.Health;

/// <summary>The folder and the disk it lies on.</summary>
sealed class PlaceChecks(HouseSettings settings, Machine machine)
{
    const UnixFileMode Others =
        UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute
        | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    // A backup, the log of a large change, and room to go back to a backup.
    const int Copies = 3;
    const long Least = 100_000_000;

    public Finding Permissions()
    {
        if (!Directory.Exists(settings.Data))
        {
            return HealthWords.NoFolder(settings.Data);
        }

        try
        {
            using var probe = new FileStream(Path.Combine(settings.Data, "write-probe"), FileMode.Create, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return HealthWords.NotWritable(settings.Data, failure.Message);
        }

        // Windows has no such modes; a new folder there belongs to its user.
        var isOpen = !OperatingSystem.IsWindows() && (File.GetUnixFileMode(settings.Data) & Others) != 0;
        return isOpen ? HealthWords.Open(settings.Data) : HealthWords.Closed(settings.Data);
    }

    public Finding FileSystem() => machine.Mounts() is { } mounts && Mounts.KindOf(settings.Data, mounts) is { } kind
        ? Mounts.IsNetwork(kind) ? HealthWords.OnNetwork(settings.Data, kind) : HealthWords.Local(settings.Data, kind)
        : HealthWords.UnknownFileSystem(settings.Data);

    public Finding Disk()
    {
        var size = File.Exists(settings.Database) ? new FileInfo(settings.Database).Length : 0;
        var needed = Math.Max(Copies * size, Least);
        var folders = new[] { settings.Data, settings.Backups }.Where(Directory.Exists).Select(folder => (Folder: folder, Free: machine.FreeBytes(folder)));
        var (tightest, free) = folders.MinBy(one => one.Free);
        return free < needed ? HealthWords.NoRoom(tightest, free, needed) : HealthWords.Room(tightest, free);
    }
}
