using System.CommandLine;
using System.Text.Json;
using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Cli;

/// <summary>Holds any plan, wherever it was made, against every rule.</summary>
static class CheckVerb
{
    public static Command Create()
    {
        var (meal, plan, json) = (InputFile.MealArgument(), InputFile.PlanArgument(), InputFile.JsonOption());
        var verb = new Command(
            "check",
            """
            Name every rule that a plan breaks, where and by how much.

            Exit 0 = the plan keeps every rule, 1 = it breaks one, 2 = bad input.

            Examples:
              cookalong check lunch.json plan.json
              cookalong check lunch.json plan.json --json
            """)
        {
            meal, plan, json,
        };
        verb.SetAction(parsed => Run(parsed, parsed.GetValue(meal)!, parsed.GetValue(plan)!, parsed.GetValue(json)));
        return verb;
    }

    static int Run(ParseResult parsed, string mealPath, string planPath, bool asJson)
    {
        var input = new InputFile(parsed, asJson);
        if (input.Meal(mealPath, now: null) is not { } meal || input.Plan(planPath, meal) is not { } plan)
        {
            return PlanningExit.BadInput;
        }

        var output = parsed.InvocationConfiguration.Output;
        var breaches = PlanCheck.Check(meal, plan);
        if (asJson)
        {
            var found = breaches.Select(breach => new
            {
                rule = JsonNamingPolicy.CamelCase.ConvertName(breach.Rule.ToString()),
                sentence = PlanWords.Rule(breach.Rule),
                facts = PlanWords.Facts(breach, meal),
                step = breach.Step?.Value,
                other = breach.Other?.Value,
                dish = breach.Dish?.Value,
                course = breach.Course?.Value,
                helper = breach.Helper?.Value,
                oven = breach.Oven?.Value,
            });
            output.WriteLine(JsonSerializer.Serialize(new { holds = breaches.IsEmpty, breaches = found }, InputFile.Json));
        }
        else if (breaches.IsEmpty)
        {
            output.WriteLine($"The plan keeps all {PlanRules.All.Length} rules.");
        }
        else
        {
            foreach (var rule in breaches.GroupBy(breach => breach.Rule))
            {
                output.WriteLine($"Broken: {PlanWords.Rule(rule.Key)}");
                foreach (var breach in rule)
                {
                    output.WriteLine($"  {PlanWords.Facts(breach, meal)}");
                }
            }
        }

        return breaches.IsEmpty ? PlanningExit.Good : PlanningExit.Late;
    }
}
