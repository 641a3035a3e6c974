using CookAlong.Benchmarks.Planners;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Benchmarks;

/// <summary>One command, one table: <c>dotnet run -c Release --project tests/CookAlong.Benchmarks</c>.</summary>
static class Table
{
    static async Task Main()
    {
        // Before this process has warmed anything up.
        List<(string What, string Figure)> rows = [.. await OwnProcess.MeasureAsync()];
        await using (var house = await House.OpenAsync())
        {
            var kept = (await house.Services.GetRequiredService<MealBook>().AllAsync()).MaxBy(meal => meal.Meal.Dishes.Length)!;
            rows.AddRange(Planning.Measure(kept.Meal));
            rows.AddRange(MealFigures.Measure());

            var plan = await house.Services.GetRequiredService<PlanningDesk>().PlanAsync(kept.Row, kept.Meal, PlanRequest.UsualCushion, Leans.None, null, default, default);
            var door = await house.Client.GetStringAsync("/sign-in");
            var board = await house.PostAsync($"/meals/{kept.Row.Id}/runs", door, []);
            var first = plan.Steps.MinBy(step => step.Start)!.Step.Value;
            rows.AddRange(await Taps.MeasureAsync(house, Guid.Parse(board.Segments[^1]), first));
        }

        Console.WriteLine("| what | figure |\n|---|---|");
        foreach (var (what, figure) in rows)
        {
            Console.WriteLine($"| {what} | {figure} |");
        }
    }
}
