using System.CommandLine;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Cli;

/// <summary>Puts the demo meals and dishes into a household that has been running; a new one gets them by itself.</summary>
static class SeedVerb
{
    public static Command Create()
    {
        var data = HouseOptions.Data();
        var verb = new Command("seed", "Add the demo meals, their dates moved to tomorrow, and the demo dishes. A new household gets them with its first host account. Exit 0 = added, 1 = failed, 2 = bad input.") { data };
        verb.SetAction(async (parsed, stop) =>
        {
            var output = parsed.InvocationConfiguration;
            if (parsed.Settings(new KeyValuePair<string, string?>("data", parsed.GetValue(data))) is not { } settings)
            {
                return ExitCode.BadInput;
            }

            await using var services = new ServiceCollection()
                .AddLogging()
                .AddSingleton(TimeProvider.System)
                .AddHouseholdData(settings)
                .AddSingleton<DemoMeals>()
                .AddSingleton<HouseholdArchive>()
                .AddSingleton<EarlierMeals>()
                .AddDishes()
                .BuildServiceProvider();
            try
            {
                await services.GetRequiredService<Upgrade>().RunAsync(stop);
            }
            catch (UpgradeException failed)
            {
                await output.Error.WriteLineAsync(failed.Message);
                return ExitCode.Failed;
            }

            IReadOnlyList<string> names = [.. await services.GetRequiredService<DemoMeals>().AddAsync(stop), .. await services.GetRequiredService<EarlierMeals>().AddAsync(stop)];
            var dishes = await services.GetRequiredService<DemoDishes>().AddAsync(stop);
            var (exit, words) = Outcome(names, dishes.Count);
            await output.Output.WriteLineAsync(words);
            return exit;
        });
        return verb;
    }

    /// <summary>Dishes that the library has are not added twice, so meals may come alone; and dishes may, where no meal lies beside the program.</summary>
    internal static (int Exit, string Words) Outcome(IReadOnlyList<string> meals, int dishes) =>
        (meals.Count + dishes == 0 ? ExitCode.Failed : ExitCode.Done,
        $"{(meals.Count == 0 ? $"There are no meal files in {DemoMeals.Folder}." : $"Added: {string.Join(", ", meals)}.")} {MealWords.Many(dishes, "dish", "dishes")} added to the library.");
}
