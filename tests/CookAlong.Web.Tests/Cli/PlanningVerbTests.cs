using System.CommandLine;
using System.Text.Json.Nodes;
using CookAlong.Web.Cli;

namespace CookAlong.Web.Tests.Cli;

/// <summary>The planning verbs as somebody at a terminal meets them: words out, errors aside, and the promised exit codes.</summary>
public sealed class PlanningVerbTests : IDisposable
{
    const string Before = "2027-03-01T09:00";

    static readonly string Supper = Path.Combine(AppContext.BaseDirectory, "seed-data", "meals", "weeknight-three-dishes.json");

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("cookalong-verbs-");

    public void Dispose() => folder.Delete(recursive: true);

    string PathOf(string name) => Path.Combine(folder.FullName, name);

    /// <summary>The supper spoilt, in a file of its own.</summary>
    string SupperWith(Action<JsonNode> change)
    {
        var meal = JsonNode.Parse(File.ReadAllText(Supper))!;
        change(meal);
        File.WriteAllText(PathOf("meal.json"), meal.ToJsonString());
        return PathOf("meal.json");
    }

    static JsonNode Step(JsonNode meal, int dish, int step) => meal["dishes"]![dish]!["steps"]![step]!;

    async Task<string> PlanOfSupper()
    {
        var (exit, _, error) = await RunAsync("plan", Supper, "--now", Before, "--seconds", "5", "--out", PathOf("plan.json"));
        Assert.True(exit == 0, error);
        return PathOf("plan.json");
    }

    [Fact]
    public async Task A_plan_on_time_is_printed_as_a_timetable_and_exits_0()
    {
        var (exit, output, error) = await RunAsync("plan", Supper, "--now", Before, "--seconds", "5");

        Assert.Equal(0, exit);
        Assert.Empty(error);
        Assert.Contains("Wednesday 10 March 2027", output, StringComparison.Ordinal);
        Assert.Matches(@"19:00\s+To the table: Supper", output);
        Assert.Matches(@"Scrub the potatoes and cut wedges\s+Hanne", output);
        Assert.Contains("A plan on time", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_written_plan_keeps_every_rule()
    {
        var (exit, output, _) = await RunAsync("check", Supper, await PlanOfSupper());

        Assert.Equal(0, exit);
        Assert.Contains("keeps all", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_goes_into_a_calendar_file()
    {
        var (exit, _, error) = await RunAsync("plan", Supper, "--now", Before, "--seconds", "5", "--ics", PathOf("supper.ics"));

        Assert.True(exit == 0, error);
        var table = Ical.Net.Calendar.Load(await File.ReadAllTextAsync(PathOf("supper.ics"), TestContext.Current.CancellationToken))!.Events.Single(one => one.Uid!.StartsWith("table.", StringComparison.Ordinal));
        Assert.Equal("Supper on the table", table.Summary);
        Assert.EndsWith("-2027-03-10.cookalong", table.Uid!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_as_JSON_is_the_plan_file()
    {
        var (exit, output, _) = await RunAsync("plan", Supper, "--now", Before, "--seconds", "5", "--json");

        Assert.Equal(0, exit);
        Assert.Equal("cookalong-plan/1", JsonNode.Parse(output)!["format"]!.GetValue<string>());
    }

    [Fact]
    public async Task A_reproducible_plan_comes_out_the_same_again()
    {
        async Task<string> Steps()
        {
            var (_, output, _) = await RunAsync("plan", Supper, "--now", Before, "--reproducible", "--json");
            return JsonNode.Parse(output)!["steps"]!.ToJsonString();
        }

        Assert.Equal(await Steps(), await Steps());
    }

    [Fact]
    public async Task A_meal_begun_too_late_exits_1_and_says_how_late()
    {
        var (exit, output, _) = await RunAsync("plan", Supper, "--now", "2027-03-10T18:30", "--seconds", "5");

        Assert.Equal(1, exit);
        Assert.Contains("min late", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sound_meal_that_nobody_can_cook_exits_3()
    {
        // Both must end the very minute the third begins, and there is one pair of hands.
        var meal = SupperWith(meal =>
        {
            Step(meal, 2, 0)["after"] = new JsonArray();
            Step(meal, 2, 0)["needs"] = new JsonArray("knife");
            Step(meal, 2, 2)["after"] = JsonNode.Parse("""[{ "step": "salad-slice", "gap": { "most": 0 } }, { "step": "potatoes-cut", "gap": { "most": 0 } }]""");
        });
        var (exit, output, _) = await RunAsync("plan", meal, "--now", Before, "--seconds", "10");

        Assert.Equal(3, exit);
        Assert.Contains("No plan", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bad_input_exits_2_and_names_place_problem_and_remedy()
    {
        var meal = SupperWith(meal =>
        {
            Step(meal, 0, 0)["minutes"] = -4;
            Step(meal, 1, 2)["uses"] = JsonNode.Parse("""[{ "oven": { "celsius": { "min": 300, "max": 320 } } }]""");
        });
        var (exit, output, error) = await RunAsync("plan", meal, "--now", Before);

        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains("/dishes/0/steps/0/minutes: -4 is out of range here. Write a whole number", error, StringComparison.Ordinal);
        Assert.Contains("/dishes/1/steps/2/uses", error, StringComparison.Ordinal);
        Assert.Contains("no oven here reaches", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bad_input_with_json_prints_the_errors_as_JSON()
    {
        var (exit, output, _) = await RunAsync("plan", SupperWith(meal => meal["name"] = 3), "--now", Before, "--json");

        Assert.Equal(2, exit);
        Assert.Equal("/name", JsonNode.Parse(output)!["errors"]![0]!["place"]!.GetValue<string>());
    }

    [Fact]
    public async Task Ten_megabytes_of_nonsense_exit_2_with_a_sentence()
    {
        await File.WriteAllBytesAsync(PathOf("nonsense.json"), [.. Enumerable.Range(0, 10_000_001).Select(at => (byte)(at % 251))], TestContext.Current.CancellationToken);
        var (exit, _, error) = await RunAsync("plan", PathOf("nonsense.json"));

        Assert.Equal(2, exit);
        Assert.Contains("larger than 10 MB", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bytes_that_are_no_text_exit_2()
    {
        await File.WriteAllBytesAsync(PathOf("picture.json"), [0x89, 0x50, 0x4E, 0x47, 0xFF, 0xD8], TestContext.Current.CancellationToken);
        var (exit, _, error) = await RunAsync("plan", PathOf("picture.json"));

        Assert.Equal(2, exit);
        Assert.Contains("not UTF-8", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_simulation_with_the_same_seed_says_the_same()
    {
        var plan = await PlanOfSupper();
        var (exit, first, _) = await RunAsync("simulate", Supper, plan, "--runs", "500", "--seed", "7", "--json");
        var (_, second, _) = await RunAsync("simulate", Supper, plan, "--runs", "500", "--seed", "7", "--json");

        Assert.Equal(0, exit);
        Assert.Equal(first, second);
        Assert.InRange(JsonNode.Parse(first)!["onTimeWithin10"]!.GetValue<double>(), 0, 1);
    }

    [Fact]
    public async Task A_simulation_says_when_it_is_served_and_what_decides_it()
    {
        var plan = await PlanOfSupper();
        var (_, output, _) = await RunAsync("simulate", Supper, plan);
        var (_, json, _) = await RunAsync("simulate", Supper, plan, "--json");

        Assert.Matches(@"Supper: (half|nine|at)", output);
        Assert.Equal(20, JsonNode.Parse(json)!["tables"]![0]!["days"]!.AsArray().Count);
    }

    [Fact]
    public async Task A_leant_plan_says_what_that_costs_and_remembers_it()
    {
        var (exit, told, error) = await RunAsync("plan", SupperWith(_ => { }), "--now", Before, "--seconds", "1", "--lean", "start-later,wash-up");
        var (_, json, _) = await RunAsync("plan", SupperWith(_ => { }), "--now", Before, "--seconds", "1", "--lean", "start-later,wash-up", "--json");

        Assert.True(exit == 0, error);
        Assert.Contains("On time, as before.", told, StringComparison.Ordinal);
        Assert.Contains("Hands-on work: ", told, StringComparison.Ordinal);
        Assert.Equal(["start-later", "wash-up"], JsonNode.Parse(json)!["cost"]!["leans"]!.AsArray().Select(lean => lean!.GetValue<string>()));
    }

    [Fact]
    public async Task Buffers_are_looked_for_until_a_plan_is_as_sure_as_wished()
    {
        // With work that may take three times as long the supper needs them.
        var meal = SupperWith(meal =>
        {
            foreach (var step in meal["dishes"]!.AsArray().SelectMany(dish => dish!["steps"]!.AsArray()).Where(step => step!["minutes"] is JsonValue))
            {
                var likely = step!["minutes"]!.GetValue<int>();
                step["minutes"] = new JsonObject { ["least"] = Math.Max(1, likely / 2), ["likely"] = likely, ["most"] = likely * 3 };
            }
        });
        var (plainExit, plain, _) = await RunAsync("plan", meal, "--now", Before, "--seconds", "1", "--json");
        var (exit, surer, error) = await RunAsync("plan", meal, "--now", Before, "--seconds", "1", "--confidence", "0.99", "--json");

        Assert.True((plainExit, exit) == (0, 0), error);
        Assert.True(Chance(surer) >= Chance(plain));
        Assert.True(Chance(surer) >= 0.99 || Cushion(surer) > Cushion(plain), surer);

        static double Chance(string plan) => JsonNode.Parse(plan)!["confidence"]!["onTimeWithin10"]!.GetValue<double>();
        static int Cushion(string plan) => JsonNode.Parse(plan)!["cost"]!["cushion"]!.GetValue<int>();
    }

    [Theory]
    [InlineData("plan", "no-such-meal.json")]
    [InlineData("plan")]
    [InlineData("plan", "meal.json", "--seconds", "0")]
    [InlineData("plan", "meal.json", "--lean", "sideways")]
    [InlineData("plan", "meal.json", "--seconds", "soon")]
    [InlineData("plan", "meal.json", "--confidence", "2")]
    [InlineData("check", "meal.json")]
    [InlineData("simulate", "meal.json", "plan.json", "--runs", "0")]
    public async Task A_wrong_call_exits_2(params string[] args)
    {
        var (exit, _, error) = await RunAsync(args);

        Assert.Equal(2, exit);
        Assert.NotEmpty(error);
    }

    [Theory]
    [InlineData("yesterday", "not a local time")]
    [InlineData("2027-03-28T02:30", "not a local time")]
    [InlineData("2027-03-10T19:00", "in the past")]
    public async Task An_hour_that_does_not_fit_exits_2(string now, string says)
    {
        var (exit, _, error) = await RunAsync("plan", Supper, "--now", now);

        Assert.Equal(2, exit);
        Assert.Contains(says, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_spoilt_plan_breaks_rules_by_name()
    {
        var path = await PlanOfSupper();
        var plan = JsonNode.Parse(await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken))!;
        var chop = plan["steps"]!.AsArray().Single(step => step!["step"]!.GetValue<string>() == "bake-chop")!;
        chop["helpers"] = new JsonArray("lina");
        await File.WriteAllTextAsync(path, plan.ToJsonString(), TestContext.Current.CancellationToken);

        var (exit, output, _) = await RunAsync("check", Supper, path);
        Assert.Equal(1, exit);
        Assert.Contains("Broken: A child is given only child-safe work.", output, StringComparison.Ordinal);
        Assert.Contains("Lina is a child, and \"Chop the onion\" (bake-chop)", output, StringComparison.Ordinal);

        var (_, json, _) = await RunAsync("check", Supper, path, "--json");
        Assert.Contains(JsonNode.Parse(json)!["breaches"]!.AsArray(), breach => breach!["rule"]!.GetValue<string>() == "children");
    }

    [Theory]
    [InlineData("plan", "Exit 0")]
    [InlineData("check", "Exit 0")]
    [InlineData("simulate", "--seed")]
    public async Task Help_teaches_by_example(string verb, string says)
    {
        var (exit, output, _) = await RunAsync(verb, "--help");

        Assert.Equal(0, exit);
        Assert.Contains("Examples:", output, StringComparison.Ordinal);
        Assert.Contains(says, output, StringComparison.Ordinal);
    }

    static async Task<(int Exit, string Output, string Error)> RunAsync(params string[] args)
    {
        var how = new InvocationConfiguration { Output = new StringWriter(), Error = new StringWriter(), EnableDefaultExceptionHandler = false };
        var exit = await CommandLine.RunAsync(args, how);
        return (exit, how.Output.ToString()!, how.Error.ToString()!);
    }
}
