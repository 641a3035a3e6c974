using System.Text.RegularExpressions;

namespace CookAlong.Web.Features.Health;

/// <summary>On which kind of file system a folder lies. SQLite's log does not work over a network (sqlite.org/wal.html: all processes must be on the same host).</summary>
static partial class Mounts
{
    // Linux' names, from memory.
    static readonly HashSet<string> network = new(StringComparer.Ordinal)
    {
        "nfs", "nfs4", "cifs", "smbfs", "smb3", "9p", "afs", "ceph", "glusterfs", "lustre", "ocfs2", "gfs2", "ncpfs", "davfs", "beegfs",
        "fuse.sshfs", "fuse.glusterfs", "fuse.ceph", "fuse.davfs", "fuse.rclone", "fuse.s3fs", "fuse.curlftpfs", "fuse.smbnetfs",
    };

    public static bool IsNetwork(string kind) => network.Contains(kind);

    /// <summary>"ext4"; null when no mount holds the folder.</summary>
    /// <param name="mounts">As in /proc/mounts: device, place, kind, separated by blanks; later lines lie over earlier ones.</param>
    public static string? KindOf(string folder, string mounts) => mounts
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select(line => line.Split(' '))
        .Where(parts => parts.Length > 2)
        .Select(parts => (Place: Plain(parts[1]), Kind: parts[2]))
        .Where(mount => IsWithin(folder, mount.Place))
        .Reverse()
        .MaxBy(mount => mount.Place.Length).Kind;

    static bool IsWithin(string folder, string place) => place == "/" || folder == place || folder.StartsWith(place + "/", StringComparison.Ordinal);

    static string Plain(string place) => Octal().Replace(place, code => ((char)Convert.ToInt32(code.Groups[1].Value, 8)).ToString());

    [GeneratedRegex(@"\\([0-7]{3})")]
    private static partial Regex Octal();
}
