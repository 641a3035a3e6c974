using System.Globalization;
using CookAlong.Benchmarks.Instances;
using CookAlong.Benchmarks.Kitchens;
using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Benchmarks;

/// <summary>
/// One command, one table: <c>dotnet run -c Release --project tests/CookAlong.Benchmarks</c>, or the parts named after it:
/// process, demo, replan, again, families, instances, doneness, learning, intake, patience, taps, screens, and, only when named, crashes with how many kills (1,000), nodes with
/// how many, and load: see <see cref="LoadWanted"/>.
/// With the word quick beside them, instances and families take a smaller sample, fifteen minutes at the most for each.
/// </summary>
static class Table
{
    static async Task<int> Main(string[] parts)
    {
        if (parts is ["crashes", .. var kills])
        {
            return await CrashesAsync(kills is [var many] ? int.Parse(many, CultureInfo.InvariantCulture) : 1_000);
        }

        if (parts is ["nodes", var each])
        {
            await using var nodes = await TwoNodes.StartAsync();
            return Say(await CrashLoop.RunAsync(nodes.First, [nodes.First, nodes.Second], int.Parse(each, CultureInfo.InvariantCulture), seed: 1));
        }

        if (parts is ["load", .. var words])
        {
            if (LoadWanted.Read(words) is not { } wanted)
            {
                await Console.Error.WriteLineAsync(LoadWanted.Usage);
                return 2;
            }

            Print(await Load.MeasureAsync(wanted));
            return 0;
        }

        var isQuick = parts.Contains("quick");
        parts = [.. parts.Where(part => part != "quick")];
        Dictionary<string, Func<Task<IEnumerable<(string, string)>>>> all = new()
        {
            ["process"] = async () => await OwnProcess.MeasureAsync(),
            ["demo"] = () => AtHomeAsync((_, kept) => Task.FromResult(Planning.Measure(kept.Meal))),
            ["replan"] = () => AtHomeAsync((_, kept) => Task.FromResult(Replanning.Measure(kept.Meal))),
            ["again"] = () => Task.FromResult(PlannedAgain.Measure()),
            ["families"] = () => Task.FromResult(MealFigures.Measure(isQuick)),
            ["instances"] = () => Task.FromResult(InstanceFigures.Measure(isQuick)),
            ["effort"] = () => Task.FromResult(Effort.Measure()),
            ["doneness"] = () => Task.FromResult(DonenessFigures.Measure()),
            ["learning"] = () => Task.FromResult(LearningFigures.Measure()),
            ["intake"] = () => Task.FromResult(IntakeFigures.Measure()),
            ["patience"] = () => Task.FromResult(Patience.Measure()),
            ["taps"] = () => AtHomeAsync((house, kept) => OnItsRunAsync(house, kept, Taps.MeasureAsync)),
            ["screens"] = async () => [.. await AtHomeAsync((house, kept) => OnItsRunAsync(house, kept, TwentyScreens.MeasureAsync)), .. await Screens.MeasureAsync()],
            ["devices"] = async () => await Devices.MeasureAsync(),
        };
        if (parts.FirstOrDefault(part => !all.ContainsKey(part)) is { } unknown)
        {
            await Console.Error.WriteLineAsync($"No part \"{unknown}\". Parts: {string.Join(", ", all.Keys)}.");
            return 2;
        }

        Console.WriteLine("| what | figure |\n|---|---|");
        // The process comes first, before this one has warmed anything up.
        foreach (var (name, measure) in all.Where(one => parts.Length == 0 || parts.Contains(one.Key)))
        {
            foreach (var (what, figure) in await measure())
            {
                Console.WriteLine($"| {what} | {figure} |");
            }
        }

        return 0;
    }

    static async Task<int> CrashesAsync(int kills) => Say(await CrashLoop.RunAsync(kills, seed: kills));

    /// <returns>1 when something was lost or doubled.</returns>
    static int Say(CrashReport report)
    {
        Print(report.Rows);
        return report is { CommandsLost: 0, CommandsDoubled: 0, CallsLost: 0, AnswersDoubled: 0 } ? 0 : 1;
    }

    static void Print(IEnumerable<(string What, string Figure)> rows)
    {
        Console.WriteLine("| what | figure |\n|---|---|");
        foreach (var (what, figure) in rows)
        {
            Console.WriteLine($"| {what} | {figure} |");
        }
    }

    static async Task<IEnumerable<(string, string)>> AtHomeAsync(Func<House, KeptMeal, Task<IEnumerable<(string, string)>>> measure)
    {
        await using var house = await House.OpenAsync();
        var kept = (await house.Services.GetRequiredService<MealBook>().AllAsync()).MaxBy(meal => meal.Meal.Dishes.Length)!;
        return (await measure(house, kept)).ToArray();
    }

    static async Task<IEnumerable<(string, string)>> OnItsRunAsync(House house, KeptMeal kept, Func<House, Guid, string, Task<IEnumerable<(string, string)>>> measure)
    {
        var plan = await house.Services.GetRequiredService<PlanningDesk>().PlanAsync(kept.Row, kept.Meal, PlanRequest.UsualCushion, Leans.None, null, default, default)
            ?? throw new InvalidOperationException("Nobody stopped the planning.");
        var door = await house.Client.GetStringAsync("/sign-in");
        var board = await house.PostAsync($"/meals/{kept.Row.Id}/runs", door, []);
        var first = plan.Steps.MinBy(step => step.Start)!.Step.Value;
        return await measure(house, Guid.Parse(board.Segments[^1]), first);
    }
}
