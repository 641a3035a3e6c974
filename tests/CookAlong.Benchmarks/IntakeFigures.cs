using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;

namespace CookAlong.Benchmarks;

/// <summary>How long recipes take to be read: a whole cookery book, single steps that grow, and pages made to be slow.</summary>
static partial class IntakeFigures
{
    const string Book = "cookery-book-1896.txt";

    static readonly int[] Lengths = [100_000, 200_000, 400_000];

    public static IEnumerable<(string What, string Figure)> Measure()
    {
        var folder = Environment.GetEnvironmentVariable("COOKALONG_REFERENCE");
        if (folder is null || !File.Exists(Path.Combine(folder, Book)))
        {
            yield return ("a whole book", $"skipped: COOKALONG_REFERENCE names no folder with {Book}");
        }
        else
        {
            var text = File.ReadAllText(Path.Combine(folder, Book));
            var paragraphs = Gaps().Split(text);
            yield return ($"a whole book as {paragraphs.Length:N0} steps, cold (the first thing of the process when the part runs alone)", Milliseconds(() => Steps(paragraphs)));
            yield return ("the same, warm (median of 5)", Median(() => Steps(paragraphs)));
            yield return ("the whole book pasted at once, to a dish and its JSON, warm (median of 5)", Median(() => Dish(text)));
        }

        foreach (var (what, part) in new[]
        {
            ("sentences", "Roast the leeks at 180 °C for 20 minutes, turning once. "),
            ("without an end of a sentence", "roast at 350 F. for 20 to 25 minutes and "),
            ("of nothing but temperatures", "350 F "),
        })
        {
            yield return ($"one step of 100, 200, 400 thousand characters, {what} (median of 5)", string.Join(", ", Lengths.Select(length => Median(() => StepDraft.Of(StepRead.Of(Repeated(part, length)))))));
        }

        foreach (var (what, part) in new[] { ("open <div>", "<div>"), ("open <b> with an attribute each", "<b class=a>x"), ("paragraphs", "<p>Boil 20 minutes.</p>"), ("table cells", "<tr><td>200 g<td>leeks") })
        {
            yield return ($"a page of 500, 1,000, 2,000 thousand characters, {what} (median of 5)", string.Join(", ", Lengths.Select(length => Median(() => Dish(Repeated(part, 5 * length))))));
        }

        yield return ("load of the machine, last minute", File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown");
    }

    static void Steps(string[] paragraphs)
    {
        foreach (var paragraph in paragraphs)
        {
            StepDraft.Of(StepRead.Of(paragraph));
        }
    }

    static void Dish(string text) => DishDraft.Of(RecipeRead.Of(text), 4, SpoonSizes.Metric).ToJson("dish", "main", fridge: null).ToJsonString();

    static string Repeated(string part, int length) => string.Concat(Enumerable.Repeat(part, (length / part.Length) + 1))[..length];

    static string Milliseconds(Action act) => Text(Once(act));

    static string Median(Action act) => Text(Enumerable.Range(0, 6).Select(_ => Once(act)).Skip(1).Order().ElementAt(2));

    static double Once(Action act)
    {
        var watch = Stopwatch.StartNew();
        act();
        return watch.Elapsed.TotalMilliseconds;
    }

    static string Text(double milliseconds) => string.Create(CultureInfo.InvariantCulture, $"{milliseconds:F0} ms");

    [GeneratedRegex(@"\n\s*\n")]
    private static partial Regex Gaps();
}
