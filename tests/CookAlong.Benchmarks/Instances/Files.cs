using System.Globalization;
using System.Text.Json;

namespace CookAlong.Benchmarks.Instances;

/// <summary>Reads published instances in the formats of their libraries.</summary>
static class Files
{
    /// <summary>Resource-constrained project scheduling, files <c>.sm</c> of PSPLIB (R. Kolisch, A. Sprecher, 1996), one mode a job.</summary>
    /// <param name="set">j30, j60 or j120: a folder of that name, and the best known makespans in <c>NAME-best.csv</c>.</param>
    public static Instance[] Projects(string folder, string set)
    {
        var best = File.ReadLines(Path.Combine(folder, $"{set}-best.csv")).Skip(1).Select(line => line.Split(','))
            .ToDictionary(row => row[0], row => Whole(row[2]));
        return [.. Directory.GetFiles(Path.Combine(folder, set), "*.sm").Order(StringComparer.Ordinal)
            .Select(file => Project(file, best[Path.GetFileName(file)]))];
    }

    /// <summary>Job shops as in the OR-Library: a line a job, machine and duration of each operation in turn; the best in <c>optimum.csv</c>.</summary>
    public static Instance[] JobShops(string folder) =>
    [
        .. File.ReadLines(Path.Combine(folder, "jobshop", "optimum.csv")).Where(line => !line.StartsWith("problem", StringComparison.Ordinal)).Select(line => line.Split(','))
            .Select(row => JobShop(Path.Combine(folder, "jobshop", row[0]), Whole(row[1]))),
    ];

    /// <summary>
    /// Task graphs of real recipes (CaptainCook4D, arXiv 2312.14556), each step as long as its median over the recorded cooks,
    /// in tens of seconds; so many pairs of hands. What makes the best of them is not published.
    /// </summary>
    public static Instance[] Recipes(string folder, int hands)
    {
        var lengths = File.ReadLines(Path.Combine(folder, "step_annotations.csv")).Skip(1).Select(Csv)
            .GroupBy(row => row[4].Trim(), row => Seconds(row[3]) - Seconds(row[2]))
            .ToDictionary(step => step.Key, step => step.Order().ElementAt(step.Count() / 2));
        return [.. Directory.GetFiles(Path.Combine(folder, "task_graphs"), "*.json").Order(StringComparer.Ordinal).Select(file => Recipe(file, lengths, hands))];
    }

    /// <summary>All of them at once.</summary>
    public static Instance Together(IReadOnlyList<Instance> parts, int hands)
    {
        var firsts = parts.Select((_, index) => parts.Take(index).Sum(part => part.Minutes.Length)).ToArray();
        return new Instance(
            "together", 0,
            [.. parts.SelectMany(part => part.Minutes)],
            [.. parts.SelectMany((part, index) => part.Before.Select(before => before.Select(task => task + firsts[index]).ToArray()))],
            [.. parts.SelectMany(part => part.Needs)],
            [hands], Hands: true);
    }

    static Instance Project(string file, int best)
    {
        var lines = File.ReadAllLines(file);
        int[][] Numbers(string heading, int skip) =>
        [
            .. lines.SkipWhile(line => !line.StartsWith(heading, StringComparison.Ordinal)).Skip(skip)
                .TakeWhile(line => !line.StartsWith('*')).Select(Row),
        ];
        var successors = Numbers("PRECEDENCE RELATIONS", 2);
        var requests = Numbers("REQUESTS/DURATIONS", 3);
        var capacity = Numbers("RESOURCEAVAILABILITIES", 2).First();

        // The first and the last job are marks of no length.
        var real = requests.Where(row => row[2] > 0).Select(row => row[0]).ToList();
        var before = real.Select(job => successors.Where(row => row.Skip(3).Contains(job) && real.Contains(row[0])).Select(row => real.IndexOf(row[0])).ToArray());
        var rows = real.Select(job => requests.Single(row => row[0] == job)).ToList();
        return real.Count == requests.Length - 2
            ? new Instance(Path.GetFileNameWithoutExtension(file), best, [.. rows.Select(row => row[2])], [.. before], [.. rows.Select(row => row[3..])], capacity)
            : throw new InvalidDataException($"{file}: a job in the middle has no length.");
    }

    static Instance JobShop(string file, int best)
    {
        var rows = File.ReadLines(file).Where(line => !line.StartsWith('#') && line.Trim().Length > 0).Select(Row).ToList();
        var (machines, jobs) = (rows[0][1], rows.Skip(1).ToList());
        var operations = jobs.SelectMany(job => job.Chunk(2).Select((one, index) => (Machine: one[0], Minutes: one[1], Index: index))).ToList();
        return new Instance(
            Path.GetFileNameWithoutExtension(file), best,
            [.. operations.Select(one => one.Minutes)],
            [.. operations.Select((one, task) => one.Index == 0 ? Array.Empty<int>() : [task - 1])],
            [.. operations.Select(one => Enumerable.Range(0, machines).Select(machine => machine == one.Machine ? 1 : 0).ToArray())],
            [.. Enumerable.Repeat(1, machines)]);
    }

    static Instance Recipe(string file, Dictionary<string, double> lengths, int hands)
    {
        using var graph = JsonDocument.Parse(File.ReadAllText(file));
        var steps = graph.RootElement.GetProperty("steps").EnumerateObject().Where(step => step.Value.GetString() is not ("START" or "END")).ToList();
        var ids = steps.Select(step => int.Parse(step.Name, CultureInfo.InvariantCulture)).ToList();
        var edges = graph.RootElement.GetProperty("edges").EnumerateArray().Select(edge => (From: edge[0].GetInt32(), To: edge[1].GetInt32())).ToList();
        return new Instance(
            Path.GetFileNameWithoutExtension(file), 0,
            [.. steps.Select(step => Math.Max(1, (int)Math.Ceiling(lengths[step.Value.GetString()!.Trim()] / 10)))],
            [.. ids.Select(id => edges.Where(edge => edge.To == id && ids.Contains(edge.From)).Select(edge => ids.IndexOf(edge.From)).Distinct().ToArray())],
            [.. ids.Select(_ => new[] { 1 })],
            [hands], Hands: true);
    }

    static int[] Row(string line) => [.. line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(Whole)];

    static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    static double Seconds(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>Quoted cells; a quote in one is doubled.</summary>
    static string[] Csv(string line) => [.. line.Trim().Trim('"').Split("\",\"").Select(cell => cell.Replace("\"\"", "\"", StringComparison.Ordinal))];
}
