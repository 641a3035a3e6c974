using System.Diagnostics;
using System.Globalization;

namespace CookAlong.Benchmarks.Kitchens;

/// <summary>
/// A small disk (tmpfs) over a folder, that only what is started on it sees: mounted in namespaces of its own, so nobody need be root.
/// SQLite follows links and would open what lies beneath, so a database is looked at after <see cref="BringOut"/>.
/// </summary>
sealed class OwnDisk : IAsyncDisposable
{
    readonly string folder;
    readonly Process holder;

    OwnDisk(string folder, Process holder) => (this.folder, this.holder) = (folder, holder);

    /// <summary>The same folder as this process sees it.</summary>
    string FromHere => $"/proc/{Number}/root{folder}";

    /// <summary>What stands before a command that is to see it.</summary>
    public IReadOnlyList<string> On => ["nsenter", "--target", Number, "--user", "--mount", "--preserve-credentials", "--"];

    string Number => holder.Id.ToString(CultureInfo.InvariantCulture);

    string Filler => Path.Combine(FromHere, "filler");

    /// <param name="folder">What is in it lies on the disk as well.</param>
    /// <returns>Null where none can be had: user namespaces are Linux', and may be forbidden.</returns>
    public static async Task<OwnDisk?> TryStartAsync(string folder, int megabytes)
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/unshare") || !File.Exists("/usr/bin/nsenter"))
        {
            return null;
        }

        // The disk is there for as long as somebody is in its namespace; cat ends when this process does.
        var mount = string.Create(CultureInfo.InvariantCulture, $"mount -t tmpfs -o size={megabytes}m,mode=700 tmpfs {folder} && echo there && exec cat");
        var holder = Process.Start(new ProcessStartInfo("unshare", ["--user", "--map-root-user", "--mount", "sh", "-c", mount]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var disk = new OwnDisk(folder, holder);
        if (await holder.StandardOutput.ReadLineAsync() != "there")
        {
            await disk.DisposeAsync();
            return null;
        }

        Copy(folder, disk.FromHere);
        return disk;
    }

    /// <summary>Puts what is on it where it was taken from.</summary>
    public void BringOut()
    {
        // Not the folder itself: Linux takes away what is mounted over a folder that is removed.
        foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            File.Delete(file);
        }

        Copy(FromHere, folder);
    }

    /// <summary>To the last byte.</summary>
    public void Fill()
    {
        using var filler = new FileStream(Filler, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        var part = new byte[4096];
        try
        {
            while (true)
            {
                filler.Write(part);
            }
        }
        catch (IOException)
        {
            // Full.
        }
    }

    public void MakeRoom() => File.Delete(Filler);

    /// <summary>For nobody to write to. Linux refuses while a file is open for writing.</summary>
    public Task CloseAsync() => RunAsync("mount", "-o", "remount,ro", folder);

    public Task OpenAsync() => RunAsync("mount", "-o", "remount,rw", folder);

    public async ValueTask DisposeAsync()
    {
        holder.StandardInput.Close();
        await holder.WaitForExitAsync();
        holder.Dispose();
    }

    static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy, overwrite: true);
        }
    }

    async Task RunAsync(params string[] command)
    {
        string[] all = [.. On, .. command];
        using var process = Process.Start(new ProcessStartInfo(all[0], all[1..]))!;
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{string.Join(' ', command)} ended with {process.ExitCode}.");
        }
    }
}
