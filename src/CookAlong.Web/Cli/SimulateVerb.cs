using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using CookAlong.Domain.Confidence;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Cli;

/// <summary>Cooks a plan many times over with uncertain durations.</summary>
static class SimulateVerb
{
    const int MostRuns = 1_000_000;

    public static Command Create()
    {
        var (meal, plan, json) = (InputFile.MealArgument(), InputFile.PlanArgument(), InputFile.JsonOption());
        var runs = new Option<int>("--runs") { Description = "How often it is cooked, 1 to 1,000,000.", HelpName = "N", DefaultValueFactory = _ => 10_000 };
        runs.Validators.Add(option =>
        {
            if (option.Tokens.Count == 1 && (!int.TryParse(option.Tokens[0].Value, CultureInfo.InvariantCulture, out var number) || number is < 1 or > MostRuns))
            {
                option.AddError("--runs takes a whole number from 1 to 1000000.");
            }
        });
        var seed = new Option<int>("--seed") { Description = "The same seed gives the same answer.", HelpName = "K", DefaultValueFactory = _ => 1 };
        var verb = new Command(
            "simulate",
            """
            Tell how sure a plan is: the chance of serving within 10 minutes of every promise, when each course is served, the steps
            that decide it, where spare minutes buy most, and how often food stands too long.
            Each step takes a time between its least and its most, mostly near its likely one.

            Exit 0 = done, 1 = the plan breaks a rule (see 'check'), 2 = bad input.

            Examples:
              cookalong simulate lunch.json plan.json
              cookalong simulate lunch.json plan.json --runs 100000 --seed 7 --json
            """)
        {
            meal, plan, runs, seed, json,
        };
        verb.SetAction(parsed =>
        {
            var asJson = parsed.GetValue(json);
            var input = new InputFile(parsed, asJson);
            if (input.Meal(parsed.GetValue(meal)!, now: null) is not { } cooked || input.Plan(parsed.GetValue(plan)!, cooked) is not { } planned)
            {
                return PlanningExit.BadInput;
            }

            if (PlanCheck.Check(cooked, planned) is { IsEmpty: false } breaches)
            {
                parsed.InvocationConfiguration.Error.WriteLine($"The plan breaks the rules in {breaches.Length} places. Ask 'check' which, and plan again.");
                return PlanningExit.Late;
            }

            var (number, first) = (parsed.GetValue(runs), parsed.GetValue(seed));
            Print(parsed.InvocationConfiguration.Output, cooked, Simulation.Run(cooked, planned, number, first), number, first, asJson);
            return PlanningExit.Good;
        });
        return verb;
    }

    static void Print(TextWriter output, Meal meal, Confidence confidence, int runs, int seed, bool asJson)
    {
        if (asJson)
        {
            var document = new JsonObject { ["runs"] = runs, ["seed"] = seed };
            foreach (var (name, value) in PlanFile.Confidence(confidence))
            {
                document[name] = value?.DeepClone();
            }

            output.WriteLine(document.ToJsonString(InputFile.Json));
            return;
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Cooked {runs:N0} times (seed {seed}):"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  served within 10 minutes of every promise: {confidence.OnTimeWithin10:P0}"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  late on average: {confidence.ExpectedLateMinutes:0.0} min"));
        foreach (var spread in confidence.Tables)
        {
            output.WriteLine($"  {SureWords.Spread(spread, meal)}");
        }

        foreach (var line in new[] { SureWords.Stands(confidence, meal), SureWords.BestSpare(confidence, meal) }.OfType<string>())
        {
            output.WriteLine($"  {line}");
        }

        output.WriteLine("  the steps that decide it most often:");
        foreach (var decisive in confidence.Decisive)
        {
            output.WriteLine($"    {meal.Step(decisive.Step).Text} ({decisive.Step}): {SureWords.Decides(decisive)}");
        }
    }
}
