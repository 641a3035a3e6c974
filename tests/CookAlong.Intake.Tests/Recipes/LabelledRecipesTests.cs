using System.Text.Json;
using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

/// <summary>
/// The reader held against recipes labelled by hand: Armed Forces Recipe Service (TM 10-412, June 2003, public domain), in the
/// folder that COOKALONG_REFERENCE names.
/// </summary>
public sealed class LabelledRecipesTests(ITestOutputHelper output)
{
    const string File = "afrs-labelled-recipes.json";

    [Fact]
    public void Times_heats_and_places_are_read_as_the_labels_have_them()
    {
        var folder = Environment.GetEnvironmentVariable("COOKALONG_REFERENCE");
        Assert.SkipWhen(folder is null || !System.IO.File.Exists(Path.Combine(folder, File)), $"COOKALONG_REFERENCE names no folder with {File}.");
        using var json = JsonDocument.Parse(System.IO.File.ReadAllText(Path.Combine(folder!, File)));
        var (times, heats) = (new Score(), new Score());
        var (kinds, kindsRight, places, placesRight) = (0, 0, 0, 0);
        foreach (var (text, gold) in Steps(json))
        {
            var read = StepRead.Of(text);
            var wrong = times.Count(Durations(gold), read.Times.Where(time => time.Role == TimeRole.Takes).Select(time => $"{time.Least:0.##}-{time.Most:0.##}"));
            var wanted = Temperatures(gold).ToList();
            if (gold is null && text.Contains("under refrigeration at 41 F.", StringComparison.Ordinal))
            {
                // The one temperature of the file that nobody labelled.
                wanted.Add((41, "chill"));
            }

            wrong |= heats.Count(wanted.Select(one => $"{one.Value}"), read.Heats.Select(heat => $"{heat.Said:0}"));
            foreach (var (one, heat) in wanted.Zip(read.Heats))
            {
                kinds++;
                var isRight = string.Equals(one.Kind, heat.Kind.ToString(), StringComparison.OrdinalIgnoreCase);
                kindsRight += isRight ? 1 : 0;
                wrong |= !isRight;
            }

            if (gold?.TryGetProperty("resource", out var resource) == true)
            {
                places++;
                var isRight = string.Equals(resource.GetString(), read.On.ToString(), StringComparison.OrdinalIgnoreCase);
                placesRight += isRight ? 1 : 0;
                wrong |= !isRight;
            }

            if (wrong)
            {
                output.WriteLine($"{text}\n  {gold}\n  {string.Join(", ", read.Times)} {string.Join(", ", read.Heats)} {read.On}");
            }
        }

        output.WriteLine($"times {times}; heats {heats}; kinds {kindsRight}/{kinds}; places {placesRight}/{places}");
        Assert.True(times.Precision >= 0.98 && times.Recall >= 0.98, $"times {times}");
        Assert.True(heats.Precision >= 0.98 && heats.Recall >= 0.98, $"heats {heats}");
        Assert.True(kindsRight >= 0.97 * kinds, $"kinds {kindsRight} of {kinds}");
        Assert.True(placesRight >= 0.95 * places, $"places {placesRight} of {places}");
    }

    static IEnumerable<(string Text, JsonElement? Gold)> Steps(JsonDocument json)
    {
        foreach (var recipe in json.RootElement.GetProperty("recipes").EnumerateArray())
        {
            foreach (var (list, name) in new[] { ("steps", "step"), ("notes", "note") })
            {
                if (!recipe.TryGetProperty(list, out var texts))
                {
                    continue;
                }

                var number = 0;
                foreach (var text in texts.EnumerateArray())
                {
                    number++;
                    var gold = recipe.GetProperty("gold").EnumerateArray().Where(one => one.TryGetProperty(name, out var at) && at.ValueKind == JsonValueKind.Number && at.GetInt32() == number).ToList();
                    yield return (text.GetString()!, gold.Count > 0 ? gold[0] : null);
                }
            }
        }
    }

    static IEnumerable<string> Durations(JsonElement? gold) =>
        gold?.TryGetProperty("durations", out var all) == true ? all.EnumerateArray().Select(one => $"{one[0].GetDouble():0.##}-{one[1].GetDouble():0.##}") : [];

    static IEnumerable<(int Value, string Kind)> Temperatures(JsonElement? gold) =>
        gold?.TryGetProperty("temps", out var all) == true ? all.EnumerateArray().Select(one => (one[0].GetInt32(), one[2].GetString()!)) : [];

    sealed class Score
    {
        int right;
        int missed;
        int tooMuch;

        public double Precision => right / (double)Math.Max(1, right + tooMuch);

        public double Recall => right / (double)Math.Max(1, right + missed);

        /// <returns>Whether anything was wrong.</returns>
        public bool Count(IEnumerable<string> wanted, IEnumerable<string> read)
        {
            var left = read.ToList();
            var before = (missed, tooMuch);
            foreach (var one in wanted)
            {
                if (left.Remove(one))
                {
                    right++;
                }
                else
                {
                    missed++;
                }
            }

            tooMuch += left.Count;
            return before != (missed, tooMuch);
        }

        public override string ToString() => FormattableString.Invariant($"precision {Precision:P1}, recall {Recall:P1} of {right + missed}");
    }
}
