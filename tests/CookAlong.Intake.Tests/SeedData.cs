using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests;

/// <summary>The demo meals, found by walking up from the test's folder to the one that holds the solution.</summary>
internal static class SeedData
{
    public static string Root { get; } = FindRoot(new DirectoryInfo(AppContext.BaseDirectory));

    public static string Text(string name) => File.ReadAllText(Path.Combine(Root, "seed-data", "meals", name));

    public static IEnumerable<string> Names =>
        Directory.EnumerateFiles(Path.Combine(Root, "seed-data", "meals"), "*.json").Select(path => Path.GetFileName(path));

    public static Meal Meal(string name)
    {
        var read = MealFile.Read(Text(name));
        Assert.Empty(read.Errors);
        return read.Meal!;
    }

    private static string FindRoot(DirectoryInfo from) =>
        File.Exists(Path.Combine(from.FullName, "CookAlong.sln")) ? from.FullName : FindRoot(from.Parent!);
}
