namespace CookAlong.Web.Tests.Architecture;

/// <summary>The source tree, found from where the tests were built.</summary>
static class Sources
{
    public static string Root { get; } = FindRoot();

    public static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}Migrations{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "CookAlong.sln")))
            {
                return at.FullName;
            }
        }

        throw new InvalidOperationException($"no CookAlong.sln above {AppContext.BaseDirectory}");
    }
}
