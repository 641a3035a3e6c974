namespace CookAlong.Web.Tests.Architecture;

public sealed class FileTests
{
    const int LongestFile = 400;

    static readonly string[] Kinds = ["*.cs", "*.razor", "*.css", "*.js"];

    // Vendored files are other people's, as they came.
    static IEnumerable<string> Ours => new[] { "src", "tests" }
        .SelectMany(folder => Kinds.SelectMany(kind => Sources.Files(folder, kind)))
        .Where(file => !file.Contains("/wwwroot/lib/", StringComparison.Ordinal));

    [Fact]
    public void No_file_is_longer_than_a_reader_can_hold()
    {
        Assert.True(Ours.Count() > 50);

        Assert.All(Ours, file => Assert.InRange(File.ReadLines(file).Count(), 0, LongestFile));
    }

    [Fact]
    public void No_type_has_a_name_that_says_nothing()
    {
        string[] empty = ["Manager", "Service", "Util", "Utils", "Repository", "Dto"];
        var ours = AppDomain.CurrentDomain.GetAssemblies()
            .Where(assembly => assembly.GetName().Name is "CookAlong.Domain" or "CookAlong.Planner" or "CookAlong.Intake" or "CookAlong.Web")
            .SelectMany(assembly => assembly.GetTypes())
            .Where(type => type.Namespace?.StartsWith("CookAlong.", StringComparison.Ordinal) == true)
            .ToArray();
        Assert.NotEmpty(ours);

        Assert.All(ours, type => Assert.DoesNotContain(empty, end => type.Name.EndsWith(end, StringComparison.Ordinal)));
    }
}
