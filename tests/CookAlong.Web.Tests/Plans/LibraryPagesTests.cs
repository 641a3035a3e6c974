using System.Globalization;
using System.IO.MemoryMappedFiles;
using System.Runtime.InteropServices;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public class LibraryPagesTests
{
    [Theory]
    [InlineData("r-xp", "/usr/lib/libsolver.so.9")]
    [InlineData("r--p", "/usr/lib/libsolver.so")]
    [InlineData("r--s", "/opt/my kitchen/Kitchen.dll")]
    public void Of_a_library_what_was_never_written_is_let_go(string may, string file) =>
        Assert.Equal([(0x7f400000, 0x3000)], LibraryPages.Unwritten(Region(may, file)));

    [Theory]
    [InlineData("rw-p", "/usr/lib/libsolver.so.9")]
    [InlineData("r--p", "/usr/lib/libsolver.so.9", 4)]
    [InlineData("r--p", "/usr/lib/libsolver.so.9", 0, 4)]
    [InlineData("---p", "/usr/lib/libsolver.so.9")]
    [InlineData("r--s", "/data/cookalong.db")]
    [InlineData("r--s", "/memfd:doublemapper (deleted)")]
    [InlineData("r--p", "")]
    public void Everything_else_is_kept(string may, string file, int written = 0, int swapped = 0) =>
        Assert.Empty(LibraryPages.Unwritten([.. Region(may, file, written, swapped), .. Region("rw-p", "")]));

    [Fact]
    public void A_region_that_was_written_does_not_lend_its_place_to_the_next() =>
        Assert.Empty(LibraryPages.Unwritten([.. Region("r--p", "/usr/lib/libsolver.so.9", 4), .. Region("rw-p", "/usr/lib/libsolver.so.9")]));

    [Fact]
    public void What_was_let_go_is_no_longer_resident_and_reads_as_before()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && NativeLibrary.TryLoad("libc.so.6", out _), "For glibc on Linux.");
        var folder = Directory.CreateTempSubdirectory("cookalong-");
        var path = Path.Combine(folder.FullName, "touched.dll");
        File.WriteAllBytes(path, [.. Enumerable.Repeat((byte)7, 1 << 20)]);
        using (var file = MemoryMappedFile.CreateFromFile(path, FileMode.Open, null, 0, MemoryMappedFileAccess.Read))
        using (var view = file.CreateViewAccessor(0, 0, MemoryMappedFileAccess.Read))
        {
            var all = new byte[1 << 20];
            view.ReadArray(0, all, 0, all.Length);
            Assert.Equal(1024, ResidentKilobytes(path));

            LibraryPages.LetGo();

            Assert.Equal(0, ResidentKilobytes(path));
            Assert.Equal(7, view.ReadByte(4096));
        }

        folder.Delete(recursive: true);
    }

    static int ResidentKilobytes(string path) => int.Parse(
        File.ReadLines("/proc/self/smaps").SkipWhile(line => !line.EndsWith(path, StringComparison.Ordinal)).First(line => line.StartsWith("Rss:", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[1],
        CultureInfo.InvariantCulture);

    /// <summary>As the kernel tells it, in proc_pid_smaps(5); most of its lines left out.</summary>
    static string[] Region(string may, string file, int written = 0, int swapped = 0) =>
    [
        $"7f400000-7f403000 {may} 00001000 fe:00 350922                     {file}",
        "Size:                 12 kB",
        "Rss:                  12 kB",
        $"Anonymous:        {written,8} kB",
        $"Swap:             {swapped,8} kB",
        "VmFlags: rd ex mr mw me sd",
    ];
}
