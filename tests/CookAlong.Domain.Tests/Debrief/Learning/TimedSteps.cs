using System.Globalization;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Tests.Debrief.Learning;

/// <summary>
/// Steps of 24 recipes timed on real people, up to 18 recordings of each (CaptainCook4D, arXiv 2312.14556, about 5,400 timings), read from
/// the folder that COOKALONG_REFERENCE names. Each recording after the k-th is foretold from the k before it.
/// </summary>
static class TimedSteps
{
    public const string Missing = "COOKALONG_REFERENCE names no folder with captaincook4d/step_annotations.csv.";

    static readonly string Path = System.IO.Path.Combine(Environment.GetEnvironmentVariable("COOKALONG_REFERENCE") ?? "", "captaincook4d", "step_annotations.csv");

    public static bool IsThere => File.Exists(Path);

    /// <param name="k">How many recordings are known, 1 or more.</param>
    public static Foretold Foretell(int k)
    {
        var all = Read();
        var average = all.Average(one => one.Minutes);
        var (count, held, ours, plain, first, ownAverage) = (0, 0, 0.0, 0.0, 0.0, 0.0);
        foreach (var step in all.GroupBy(one => (one.Recipe, one.Step)))
        {
            // No recipe here says how long a step takes, so what is written is what the other steps of all recipes take.
            var written = Written(all.Where(one => (one.Recipe, one.Step) != step.Key));
            var key = StepKey.Of($"{step.Key.Recipe}", $"{step.Key.Step}");
            var times = step.OrderBy(one => one.Recording).ToArray();
            for (var next = k; next < times.Length; next++)
            {
                // The k right before it.
                var known = times[(next - k)..next];
                var learned = new HouseholdPace(known.Select(one => new Timing(RunOf(one.Recording), key, "", null, written, one.Minutes))).Of(key, "", written).Minutes;
                var truth = times[next].Minutes;
                count++;
                held += learned.Least <= truth && truth <= learned.Most ? 1 : 0;
                ours += Math.Abs(learned.Likely - truth);
                plain += Math.Abs(average - truth);
                first += Math.Abs(known[0].Minutes - truth);
                ownAverage += Math.Abs(known.Average(one => one.Minutes) - truth);
            }
        }

        return new(count, (double)held / count, 60 * ours / count, 60 * plain / count, 60 * first / count, 60 * ownAverage / count);
    }

    static WrittenTime Written(IEnumerable<Timed> others)
    {
        var minutes = others.Select(one => one.Minutes).Order().ToArray();
        return new(minutes[minutes.Length / 10], minutes[minutes.Length / 2], minutes[minutes.Length * 9 / 10]);
    }

    static RunId RunOf(int recording) => new(new Guid(recording, 0, 0, new byte[8]));

    /// <summary>A step that a recording leaves out has times below 0; one that it has twice counts once, the first time.</summary>
    static Timed[] Read()
    {
        double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
        return
        [
            .. from line in File.ReadLines(Path).Skip(1)
               let fields = line.Split("\",\"").Select(field => field.Trim('"')).ToArray()
               let names = fields[0].Split('_')
               let timed = new Timed(int.Parse(names[0], CultureInfo.InvariantCulture), int.Parse(fields[1], CultureInfo.InvariantCulture), int.Parse(names[1], CultureInfo.InvariantCulture), (Number(fields[3]) - Number(fields[2])) / 60)
               where Number(fields[2]) >= 0 && timed.Minutes > 0
               group timed by (timed.Recipe, timed.Step, timed.Recording) into same
               select same.First(),
        ];
    }

    sealed record Timed(int Recipe, int Step, int Recording, double Minutes);
}

/// <param name="Count">Recordings foretold.</param>
/// <param name="Held">Of them, within the range of eight in ten.</param>
/// <param name="Error">Mean absolute error of the likely time; seconds, like those of the others.</param>
/// <param name="OfAverage">Of the average of the whole data set.</param>
/// <param name="OfFirst">Of the first of the known recordings.</param>
/// <param name="OfOwnAverage">Of the average of the known recordings.</param>
sealed record Foretold(int Count, double Held, double Error, double OfAverage, double OfFirst, double OfOwnAverage);
