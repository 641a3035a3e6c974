using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;

namespace CookAlong.Web.Features.Plans;

/// <summary>
/// Whatever of the program's libraries was ever touched stays in its memory, most of it for a start or a planning alone, and the
/// assemblies twice, since the runtime maps each as a file and as code. Let go, it stays in the system's cache of files while there
/// is room for it: a page that is wanted again comes from there, without reading. For glibc on Linux only.
/// </summary>
static partial class LibraryPages
{
    /// <summary>MADV_DONTNEED of Linux's mman.h.</summary>
    const int DontNeed = 4;

    const string Regions = "/proc/self/smaps";

    public static void LetGo()
    {
        if (!File.Exists(Regions))
        {
            return;
        }

        foreach (var (start, length) in Unwritten(File.ReadLines(Regions)))
        {
            // A no is harmless: the pages then stay.
            _ = madvise(start, length, DontNeed);
        }
    }

    /// <summary>
    /// Of the regions in the kernel's own words, those of libraries that cannot be written to and never were: a page that was
    /// written is nowhere else, in memory or swapped out, as the loader's relocations are, which it then protects. Libraries
    /// alone, since these are never unloaded here; the place of another file may be something else's by the time it is let go.
    /// </summary>
    internal static IEnumerable<(nint Start, nuint Length)> Unwritten(IEnumerable<string> lines)
    {
        Match? library = null;
        var unwritten = 0;
        foreach (var line in lines)
        {
            if (Region().IsMatch(line))
            {
                (library, unwritten) = (Library().Match(line), 0);
            }
            else if (NothingOf().IsMatch(line) && ++unwritten == 2 && library is { Success: true })
            {
                var start = Place(library.Groups["start"]);
                yield return (start, (nuint)(Place(library.Groups["end"]) - start));
            }
        }
    }

    static nint Place(Group hex) => nint.Parse(hex.ValueSpan, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<start>[0-9a-f]+)-(?<end>[0-9a-f]+) r-[x-][ps] .*(\.dll|\.so(\.[0-9.]+)?)$")]
    private static partial Regex Library();

    [GeneratedRegex("^[0-9a-f]+-[0-9a-f]+ ")]
    private static partial Regex Region();

    [GeneratedRegex("^(Anonymous|Swap): +0 kB$")]
    private static partial Regex NothingOf();

    [DllImport("libc.so.6"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    static extern int madvise(nint start, nuint length, int advice);
}
