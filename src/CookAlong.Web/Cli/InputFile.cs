using System.CommandLine;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;

namespace CookAlong.Web.Cli;

/// <summary>Reads the files a verb is given; what is wrong goes to the error stream, with --json to the output as well.</summary>
sealed class InputFile(ParseResult parsed, bool asJson)
{
    const long MostBytes = 10_000_000;

    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static Argument<string> MealArgument() => new("MEAL") { Description = "A meal file (cookalong-meal/1).", HelpName = "MEAL.json" };

    public static Argument<string> PlanArgument() => new("PLAN") { Description = "A plan file (cookalong-plan/1) made for that meal.", HelpName = "PLAN.json" };

    public static Option<bool> JsonOption() => new("--json") { Description = "Print JSON instead of words." };

    /// <summary>Null when there is none; then everything wrong has been told.</summary>
    public Meal? Meal(string path, Minute? now)
    {
        if (Text(path) is not { } text)
        {
            return null;
        }

        var read = MealFile.Read(text, now);
        Tell(path, read.Errors);
        return read.Meal;
    }

    public Plan? Plan(string path, Meal meal)
    {
        if (Text(path) is not { } text)
        {
            return null;
        }

        var read = PlanFile.Read(text, meal);
        Tell(path, read.Errors);
        return read.Plan;
    }

    string? Text(string path)
    {
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > MostBytes })
            {
                Tell(path, [new FileError("", "The file is larger than 10 MB.", "Check that it is the right file; a meal takes a few hundred kilobytes at the most.")]);
                return null;
            }

            return File.ReadAllText(path, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true));
        }
        catch (DecoderFallbackException)
        {
            Tell(path, [new FileError("", "The file is not UTF-8 text.", "Save it as UTF-8, or choose the right file.")]);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Tell(path, [new FileError("", $"The file cannot be read: {problem.Message}", "Check its name and whether you may read it.")]);
        }

        return null;
    }

    void Tell(string path, IReadOnlyList<FileError> errors)
    {
        foreach (var error in errors)
        {
            parsed.InvocationConfiguration.Error.WriteLine(Plain($"{path}{(error.Place.Length == 0 ? "" : " at " + error.Place)}: {error.Problem} {error.Remedy}"));
        }

        if (asJson && errors.Count > 0)
        {
            parsed.InvocationConfiguration.Output.WriteLine(JsonSerializer.Serialize(new { file = path, errors }, Json));
        }
    }

    /// <summary>An error may quote the file, and a terminal obeys control characters.</summary>
    static string Plain(string text) => string.Concat(text.Select(character => char.IsControl(character) ? '\uFFFD' : character));
}
