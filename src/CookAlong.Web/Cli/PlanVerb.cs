using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.PlanFiles;
using CookAlong.Planner;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Cli;

/// <summary>Plans a meal file backward from its table times.</summary>
static class PlanVerb
{
    public static Command Create()
    {
        var (meal, json) = (InputFile.MealArgument(), InputFile.JsonOption());
        var output = new Option<string?>("--out") { Description = "Write the plan to this file too.", HelpName = "PLAN.json" };
        var calendar = new Option<string?>("--ics") { Description = "Write it as a calendar with alarms to this file too (iCalendar).", HelpName = "FILE" };
        var seconds = new Option<double>("--seconds") { Description = "Search for better plans this long once there is one, 0.1 to 3600.", HelpName = "S", DefaultValueFactory = _ => 2 };
        seconds.Validators.Add(InRange);
        var reproducible = new Option<bool>("--reproducible")
        {
            Description = "Count the search's steps instead of seconds, on one core: the same file and --now give the same plan on any machine.",
        };
        var now = new Option<string?>("--now")
        {
            Description = "Plan as if it were this time, local to the meal (2027-12-18T09:00). Default: the clock of this machine.",
            HelpName = "TIME",
        };
        var confidence = new Option<double?>("--confidence")
        {
            Description = "Look for buffers until it is on time (within 10 minutes) with this chance, 0.5 to 0.999; 0.9 when no number follows. Takes up to five times as long.",
            HelpName = "P",
            Arity = ArgumentArity.ZeroOrOne,
            CustomParser = Chance,
        };
        var lean = new Option<Leans>("--lean")
        {
            Description = $"Lean the plan, and say what that costs; any of {string.Join(',', LeanWords.All.Keys)}. Takes twice as long.",
            HelpName = "LEANS",
            CustomParser = Leaning,
        };
        var verb = new Command(
            "plan",
            """
            Plan a meal: every step with a start, a place and a person, up to table time.

            Exit 0 = a plan on time, 1 = only a late one, 2 = bad input, also what this kitchen can never do (each error names
            its place in the file as a JSON Pointer, and the remedy), 3 = a sound meal for which no plan exists.

            Examples:
              cookalong plan seed-data/meals/midwinter-lunch.json
              cookalong plan lunch.json --out plan.json --seconds 30
              cookalong plan lunch.json --reproducible --now 2027-12-18T09:00 --out plan.json
              cookalong plan lunch.json --confidence 0.95
              cookalong plan lunch.json --lean start-later,calm-end
              cookalong plan lunch.json --json --now 2027-12-18T09:00
            """)
        {
            meal, output, calendar, seconds, reproducible, now, confidence, lean, json,
        };
        verb.SetAction((parsed, stop) =>
        {
            var request = new Request(parsed.GetValue(meal)!, parsed.GetValue(output), parsed.GetValue(calendar), Limits(parsed.GetValue(seconds), parsed.GetValue(reproducible)), parsed.GetValue(now), parsed.GetValue(confidence), parsed.GetValue(lean), parsed.GetValue(json));
            return Task.FromResult(Run(request, parsed, stop));
        });
        return verb;
    }

    sealed record Request(string Meal, string? Out, string? Ics, PlanLimits Limits, string? Now, double? Confidence, Leans Leans, bool Json);

    /// <summary>A second of search is about one of the solver's own units on an ordinary machine; the clock only stops what has gone astray.</summary>
    static PlanLimits Limits(double seconds, bool isReproducible) => isReproducible
        ? new PlanLimits(TimeSpan.FromSeconds(60 + (20 * seconds)), Workers: 1, Deterministic: seconds)
        : new PlanLimits(TimeSpan.FromSeconds(seconds));

    static int Run(Request request, ParseResult parsed, CancellationToken stop)
    {
        var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
        var input = new InputFile(parsed, request.Json);

        // A clock reading is in the meal's own zone, so the zone is read first and the table times are held against it then.
        Minute? now = Minute.Of(TimeProvider.System.GetUtcNow());
        if (request.Now is { } text)
        {
            if (input.Meal(request.Meal, now: null) is not { } unclocked)
            {
                return PlanningExit.BadInput;
            }

            now = Clock(text, unclocked.TimeZone);
            if (now is null)
            {
                error.WriteLine($"--now \"{text}\" is not a local time of {unclocked.TimeZone.Id}. Write it like 2027-12-18T09:00.");
                return PlanningExit.BadInput;
            }
        }

        if (input.Meal(request.Meal, now) is not { } meal)
        {
            return PlanningExit.BadInput;
        }

        var (planner, asked) = (MealPlanners.ForThisMachine(), new PlanRequest(meal, request.Limits, now));
        var straight = request.Leans == Leans.None ? null : planner.Plan(asked, stop: stop);
        asked = asked with { Leans = request.Leans };
        var plan = Cushions.Rehearsed(meal, planner.Plan(asked, stop: stop));
        var leaning = straight is { Status: not PlanStatus.None } && plan.Status != PlanStatus.None ? LeanPanelWords.Compared(meal, straight, plan).ToList() : [];
        var buffered = request.Confidence is { } wish ? Cushions.Reach(planner, asked, plan, wish, stop: stop) : null;
        plan = buffered?.Plan ?? plan;

        if ((request.Out is { } path && !Save(PlanFile.Write(plan, meal) + "\n", path, "--out", error))
            || (plan.Status != PlanStatus.None && request.Ics is { } calendar && !Save(PlanCalendar.Write(meal, plan, CalendarName(meal), person: null, TimeProvider.System.GetUtcNow()), calendar, "--ics", error)))
        {
            return PlanningExit.BadInput;
        }

        if (request.Json)
        {
            output.WriteLine(PlanFile.Write(plan, meal));
        }
        else
        {
            Timetable.Print(output, plan, meal);
            TellLeaning(output, request.Leans, leaning);
            if (plan.Status != PlanStatus.None)
            {
                output.WriteLine($"Hands-on work: {LeanPanelWords.Shares(meal, plan)}.");
            }

            Tell(output, plan, buffered, request.Confidence ?? Cushions.UsualWish);
        }

        return ExitOf(plan);
    }

    static void Tell(TextWriter output, Plan plan, Buffered? buffered, double wish)
    {
        if (buffered is { IsSurer: false, Plan.Confidence.OnTimeWithin10: var sure } && sure >= wish)
        {
            output.WriteLine("It needs no buffers.");
        }

        if (buffered is { IsSurer: true })
        {
            output.WriteLine($"{SureWords.Offer(buffered)} {SureWords.Price(buffered)}");
        }

        if (buffered is not null && SureWords.Unreached(buffered, wish) is { } unreached)
        {
            output.WriteLine(unreached);
        }
        else if (buffered is null && plan is { Cost.LateMinutes: 0, Confidence: { } confidence } && confidence.OnTimeWithin10 < wish)
        {
            output.WriteLine("For a surer plan, with buffers and what they cost, add --confidence.");
        }
    }

    static void TellLeaning(TextWriter output, Leans leans, List<string> sentences)
    {
        if (sentences.Count > 0)
        {
            output.WriteLine($"Leaning ({LeanPanelWords.Named(leans)}), beside the plan that does not:");
        }

        foreach (var sentence in sentences)
        {
            output.WriteLine($"  {sentence}");
        }
    }

    static Leans Leaning(ArgumentResult result)
    {
        var leans = Leans.None;
        foreach (var word in result.Tokens.SelectMany(token => token.Value.Split(',', StringSplitOptions.TrimEntries)))
        {
            if (LeanWords.Named(word) is { } lean)
            {
                leans |= lean;
            }
            else
            {
                result.AddError($"--lean takes any of {string.Join(',', LeanWords.All.Keys)}; there is no lean \"{word}\".");
            }
        }

        return leans;
    }

    static double? Chance(ArgumentResult result)
    {
        if (result.Tokens.Count == 0)
        {
            return Cushions.UsualWish;
        }

        if (double.TryParse(result.Tokens[0].Value, CultureInfo.InvariantCulture, out var chance) && chance is >= 0.5 and <= 0.999)
        {
            return chance;
        }

        result.AddError("--confidence takes a chance from 0.5 to 0.999, like 0.95.");
        return null;
    }

    static int ExitOf(Plan plan) => plan switch
    {
        { Status: PlanStatus.None } => PlanningExit.None,
        { Cost.LateMinutes: > 0 } => PlanningExit.Late,
        _ => PlanningExit.Good,
    };

    static Minute? Clock(string text, TimeZoneInfo zone)
    {
        if (DateTime.TryParseExact(text, ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
        {
            return LocalTime.Resolve(local, zone);
        }

        return DateTimeOffset.TryParseExact(text, ["yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm'Z'", "yyyy-MM-dd'T'HH:mm:ss'Z'"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var instant)
            ? Minute.Of(instant)
            : null;
    }

    /// <summary>A file has no id of its own: the same name on the same day is the same meal.</summary>
    static string CalendarName(Meal meal) =>
        $"{FileNames.Of(meal.Name)}-{LocalTime.Show(meal.FirstTableTime, meal.TimeZone).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}";

    static bool Save(string text, string path, string option, TextWriter error)
    {
        try
        {
            File.WriteAllText(path, text);
            return true;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            error.WriteLine($"The plan cannot be written to {path}: {problem.Message} Choose another place with {option}.");
            return false;
        }
    }

    static void InRange(OptionResult option)
    {
        if (option.Tokens.Count == 1 && (!double.TryParse(option.Tokens[0].Value, CultureInfo.InvariantCulture, out var seconds) || seconds is not (>= 0.1 and <= 3600)))
        {
            option.AddError("--seconds takes a number from 0.1 to 3600.");
        }
    }
}
