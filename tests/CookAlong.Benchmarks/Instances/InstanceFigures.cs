using System.Globalization;
using CookAlong.Domain.Planning;

namespace CookAlong.Benchmarks.Instances;

/// <summary>
/// The planner held against published instances and against other schedulers in the same run. The instances lie in the folder
/// that <c>COOKALONG_BENCHMARKS</c> names, the task graphs of recipes in <c>COOKALONG_REFERENCE</c>; what is not there is
/// skipped. All of j30, a sample of the others; "quick" less of each, ten minutes at the most; <c>COOKALONG_WHOLE=1</c> takes all, which takes hours.
/// </summary>
static class InstanceFigures
{
    static readonly TimeSpan Ten = TimeSpan.FromSeconds(10);
    static readonly bool IsWhole = Environment.GetEnvironmentVariable("COOKALONG_WHOLE") == "1";

    public static IEnumerable<(string What, string Figure)> Measure(bool isQuick) => Published(isQuick).Concat(Recipes());

    static IEnumerable<(string, string)> Published(bool isQuick)
    {
        if (Environment.GetEnvironmentVariable("COOKALONG_BENCHMARKS") is not { Length: > 0 } folder)
        {
            return [("published instances", "skipped: COOKALONG_BENCHMARKS names no folder")];
        }

        var (first, most) = (Files.JobShops(folder), IsWhole ? 40 : isQuick ? 5 : 15);
        var part = isQuick ? 2 : 1;
        Instance[] shops = [.. first.Where(shop => shop.Name is "ft06" or "ft10" || (shop.Name.StartsWith("la", StringComparison.Ordinal) && int.Parse(shop.Name[2..], CultureInfo.InvariantCulture) <= most))];
        return Compare("j30", Every(isQuick ? 16 : 1, Files.Projects(folder, "j30")), TimeSpan.FromSeconds(1), again: Ten)
            .Concat(Quickly("j30", folder, isQuick))
            .Concat(Compare("job shop", shops, IsWhole ? Ten : Ten / 2))
            .Concat(Compare("j60", Every(isQuick ? 40 : 8, Files.Projects(folder, "j60")), Ten))
            .Concat(Quickly("j60", folder, isQuick))
            .Concat(Compare("j120", Every(50 * part, Files.Projects(folder, "j120")), Ten))
            .Concat(Quickly("j120", folder, isQuick));
    }

    static IEnumerable<(string, string)> Recipes()
    {
        if (Environment.GetEnvironmentVariable("COOKALONG_REFERENCE") is not { Length: > 0 } folder)
        {
            return [("recipes as task graphs", "skipped: COOKALONG_REFERENCE names no folder")];
        }

        var time = TimeSpan.FromSeconds(1);
        return Compare("recipes, 2 cooks", Files.Recipes(folder, hands: 2), time)
            .Concat(Compare("16 recipes at once, 4 cooks", [Files.Together(Files.Recipes(folder, hands: 4), hands: 4)], Ten));
    }

    /// <summary>What takes milliseconds is measured on the whole set, or a quarter of it.</summary>
    static IEnumerable<(string, string)> Quickly(string set, string folder, bool isQuick)
    {
        var all = Every(isQuick ? 4 : 1, Files.Projects(folder, set));
        var best = Array.ConvertAll(all, one => one.Best);
        return new[] { 1000, 5000 }.Select(layouts =>
            ($"{set} ({(isQuick ? "every fourth, " : "all ")}{all.Length}): quick search, {layouts} layouts", Words(all, best, Array.ConvertAll(all, one => Ours.Quick(one, layouts)))));
    }

    static Instance[] Every(int nth, Instance[] all) => IsWhole ? all : [.. all.Where((_, index) => index % nth == 0)];

    /// <param name="again">What the planner has not proved by then gets this much.</param>
    static IEnumerable<(string, string)> Compare(string set, Instance[] all, TimeSpan time, TimeSpan? again = null)
    {
        var name = $"{set} ({all.Length})";
        var planner = Array.ConvertAll(all, one => Ours.Planner(one, new PlanLimits(time)));
        Outcome[][] found = [planner, Array.ConvertAll(all, one => Rivals.PlainModel(one, time))];
        var best = all.Select((one, index) => one.Best > 0 ? one.Best : found.Min(each => each[index].Makespan)).ToArray();
        string Row(Outcome[] each) => Words(all, best, each);

        yield return ($"{name}: planner, {time.TotalSeconds:F0} s", Row(planner));
        if (again is { } longer)
        {
            yield return ($"{name}: planner, {longer.TotalSeconds:F0} s", Row([.. planner.Zip(all, (one, instance) => one.Proved ? one : Ours.Planner(instance, new PlanLimits(longer)))]));
        }

        yield return ($"{name}: bare model, {time.TotalSeconds:F0} s", Row(found[1]));
        yield return ($"{name}: quick search, 50000 layouts", Row(Array.ConvertAll(all, one => Ours.Quick(one, 50_000))));
        yield return ($"{name}: latest finish first", Row(Array.ConvertAll(all, Rivals.LatestFinishFirst)));
    }

    public static string Words(Instance[] all, int[] best, Outcome[] found)
    {
        var none = found.Count(one => one.Makespan == int.MaxValue);
        var pairs = found.Zip(all.Zip(best)).Where(one => one.First.Makespan < int.MaxValue).ToList();
        var above = pairs.Average(one => (one.First.Makespan / (double)one.Second.Second) - 1);
        var path = pairs.Average(one => (one.First.Makespan / (double)one.Second.First.CriticalPath) - 1);
        return string.Create(CultureInfo.InvariantCulture, $"proved {found.Count(one => one.Proved)}, at the best {pairs.Count(one => one.First.Makespan <= one.Second.Second)}, {above:P2} above it, {path:P2} above the critical path{(none > 0 ? $"; {none} not planned" : "")}");
    }
}
