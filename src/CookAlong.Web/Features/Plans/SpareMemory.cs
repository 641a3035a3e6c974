using System.Runtime.InteropServices;

namespace CookAlong.Web.Features.Plans;

/// <summary>
/// A planning needs a hundred megabytes for some seconds, and a home server may have one gigabyte for everything. Neither the
/// collector nor the C library gives such a peak back by itself: each waits for a next one that comes tomorrow.
/// </summary>
static class SpareMemory
{
    /// <summary>M_ARENA_MAX of glibc's malloc.h.</summary>
    const int ArenaMax = -8;

    /// <summary>glibc alone keeps arenas; other C libraries have no such calls.</summary>
    static readonly bool hasArenas = OperatingSystem.IsLinux() && NativeLibrary.TryLoad("libc.so.6", out var libc) && NativeLibrary.TryGetExport(libc, "malloc_trim", out _);

    /// <summary>
    /// glibc gives up to eight arenas a core to the solver's threads, which come and go, and keeps what each once held.
    /// To be said before there are such threads.
    /// </summary>
    public static void KeepFewArenas()
    {
        if (hasArenas && mallopt(ArenaMax, Environment.ProcessorCount) == 0)
        {
            throw new InvalidOperationException("glibc does not know M_ARENA_MAX.");
        }
    }

    /// <summary>Takes some tens of milliseconds in which nothing else runs: once after a planning, not within it.</summary>
    public static void GiveBack()
    {
        if (hasArenas)
        {
            LibraryPages.LetGo();
        }

        // The solver's own objects are let go by their finalizers.
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        if (hasArenas)
        {
            _ = malloc_trim(0);
        }
    }

    [DllImport("libc.so.6"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    static extern int mallopt(int parameter, int value);

    [DllImport("libc.so.6"), DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    static extern int malloc_trim(nuint pad);
}
