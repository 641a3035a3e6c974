using System.IO.Compression;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Runs.Rehearsing;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CookAlong.Planner;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Architecture;

namespace CookAlong.Web.Tests.Household;

/// <summary>Plays the invented earlier meals once, by the real planner and the real rules of a run, and freezes what happened.</summary>
public sealed class FrozenEarlierMeals
{
    static readonly string Folder = Path.Combine(Sources.Root, "seed-data", "earlier");

    static readonly PersonId Maren = new(new Guid("0197a000-0000-7000-8000-0000000000aa"));

    /// <summary>Times what is written, by a headline's first word: whoever cooks here peels slowly and washes quickly.</summary>
    static readonly Dictionary<string, double> Pace = new() { ["Peel"] = 1.5, ["Cut"] = 1.3, ["Slice"] = 1.35, ["Shred"] = 1.3, ["Strip"] = 1.25, ["Wash"] = 0.85 };

    [Fact]
    public async Task Freeze()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COOKALONG_FREEZE_EARLIER") == "1", "Plays the invented earlier meals anew; set COOKALONG_FREEZE_EARLIER=1 to do it.");
        HouseholdRows[] all = [.. EarlierMeals.Invented.Select(one => Cook(one.Value, one.Key))];
        var rows = new HouseholdRows
        {
            Meals = [.. all.SelectMany(one => one.Meals)],
            Plans = [.. all.SelectMany(one => one.Plans)],
            Runs = [.. all.SelectMany(one => one.Runs)],
            RunEvents = [.. all.SelectMany(one => one.RunEvents)],
            Leftovers = [.. all.SelectMany(one => one.Leftovers)],
            DebriefNotes = [.. all.SelectMany(one => one.DebriefNotes)],
            OvenTrials = [Measured()],
            Again = [],
            ShoppingTaps = [],
            Dishes = [],
            DishVersions = [],
            WrittenTimes = [],
            ForgottenRuns = [],
            LearnedTimes = [],
            Settings = [],
        };
        using var archive = new MemoryStream();
        await ArchiveWriting.WriteAsync(archive, rows, new DateTimeOffset(2026, 10, 18, 0, 0, 0, TimeSpan.Zero), TestContext.Current.CancellationToken);
        using var zip = new ZipArchive(archive);
        foreach (var entry in zip.Entries)
        {
            var file = Path.Combine(Folder, entry.FullName);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            using var reader = new StreamReader(entry.Open());
            var text = await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
            var isLog = entry.FullName.StartsWith("runs/", StringComparison.Ordinal);
            await File.WriteAllTextAsync(file, isLog ? $"[\n{string.Join(",\n", JsonNode.Parse(text)!.AsArray().Select(one => one!.ToJsonString()))}\n]\n" : text, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>An oven that heats 9.5 °C a minute, settles at 170 where its dial says 180, and cools 3.5: read by somebody who is now and then a little off.</summary>
    static OvenTrialRow Measured()
    {
        var began = new DateTimeOffset(2026, 10, 24, 14, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();
        double[] minutes = [0.2, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22.6, 23.6, 24.6, 25.6, 26.6, 30, 32, 34, 36, 38];
        var luck = new Random(3);
        double At(double minute) => minute < 21 ? Math.Min(170, 19 + (9.5 * minute)) : minute < 27 ? Math.Min(170, 132 + (12 * (minute - 21.6))) : 170 - (3.5 * (minute - 27));
        return new OvenTrialRow
        {
            Id = EarlierMeals.InventedTrial,
            Oven = "The oven",
            Dial = 180,
            Began = began,
            DoorShut = began + (long)(21.6 * 60_000),
            Off = began + (27 * 60_000),
            Ended = began + (39 * 60_000),
            Document = $"[{string.Join(',', minutes.Select(minute => FormattableString.Invariant($"[{began + (long)(minute * 60_000)},{Math.Round(At(minute) + (luck.NextDouble() * 6) - 3)}]")))}]",
        };
    }

    static HouseholdRows Cook(Guid mealId, Guid runId)
    {
        var document = File.ReadAllText(Path.Combine(Folder, "meals", $"{mealId}.json"));
        var read = MealFile.Read(document);
        Assert.Empty(read.Errors);
        var meal = read.Meal!;
        var plan = MealPlanners.ForThisMachine().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(20), Deterministic: 20)));
        Assert.NotEqual(PlanStatus.None, plan.Status);
        var began = (plan.Steps.Min(step => step.Start) - 1).Utc;
        var log = new List<Logged>();
        var run = Run.Empty(new RunId(runId));

        void Note(PersonId? by, CommandId command, DateTimeOffset at, RunEvent happened)
        {
            log.Add(new Logged(run.Sequence + 1, command, by, at, happened));
            run = run.Apply(log[^1]);
        }

        void Send(Tap tap, DateTimeOffset at)
        {
            foreach (var happened in run.Decide(tap, at) is Decision.Accepted accepted ? accepted.Events : [])
            {
                Note(tap.By, tap.Id, at, happened);
            }
        }

        foreach (var begun in Run.Start(meal, plan, Maren, "Maren", new HelperId("maren"), Region.UnitedKingdom))
        {
            Note(Maren, Command(0), began, begun);
        }

        foreach (var (helper, number) in meal.Helpers.Skip(1).Select((helper, number) => (helper, number)))
        {
            var person = new PersonId(new Guid(mealId.ToByteArray()[14], 1, (short)number, new byte[8]));
            Send(new Tap(Command(10 + number), person, new RunCommand.Join(person, helper.Name, Role.Helper, helper.Id)), began);
        }

        var hands = new SimulatedHands(run.Id);
        var done = new HashSet<int>();
        for (var now = began; run.Ended is null && now < began.AddDays(2); now = now.AddSeconds(30))
        {
            if (run.Steps.Values.All(step => !step.IsRunning) && plan.Steps.All(step => run.StateOf(step.Step).Started is not null || step.Start.Utc > now.AddMinutes(10)) && run.Meal.Steps.Any(step => run.StateOf(step.Id).Finished is null))
            {
                continue;
            }

            foreach (var (said, index) in Said(meal.Name).Select((said, index) => (said, index)).Where(one => !done.Contains(one.index)))
            {
                var started = run.StateOf(new StepId(said.Step)).Started;
                if (started is { } since && now >= since.AddMinutes(said.After))
                {
                    done.Add(index);
                    Send(new Tap(Command(100 + index), Maren, said.Command), now);
                }
            }

            foreach (var tap in hands.Taps(run, Board.Of(run, now)).Where(tap => tap.Command is not RunCommand.VouchFor && !IsTooSoon(run, tap, now)).ToList())
            {
                Send(tap, now);
            }
        }

        Assert.NotNull(run.Ended);
        var cooked = run.Ended.Value.ToUnixTimeMilliseconds();
        return new HouseholdRows
        {
            Meals = [new MealRow { Id = mealId, Name = meal.Name, Document = document, ChangedAt = began.ToUnixTimeMilliseconds() }],
            Plans = [new PlanRow { Id = new Guid(mealId.ToByteArray()[14], 2, 0, new byte[8]), Meal = mealId, MealVersion = 1, MadeAt = began.ToUnixTimeMilliseconds(), Document = PlanFile.Write(plan, meal) }],
            Runs = [new RunRow { Id = runId, Meal = mealId, Name = meal.Name, Began = began.ToUnixTimeMilliseconds(), Ended = cooked }],
            RunEvents = [.. log.Select(one => Row(runId, one, log, meal))],
            Leftovers = [.. Left(meal.Name).Select(one => new LeftoverRow { Meal = mealId, Dish = one.Dish, Portions = one.Portions })],
            DebriefNotes = [.. Verdicts(meal.Name).Select(one => new DebriefNoteRow { Run = runId, Dish = one.Dish, Verdict = one.Verdict, Note = one.Note, ChangedAt = cooked })],
            Again = [],
            ShoppingTaps = [],
            Dishes = [],
            DishVersions = [],
            WrittenTimes = [],
            ForgottenRuns = [],
            LearnedTimes = [],
            Settings = [],
        };
    }

    static RunEventRow Row(Guid run, Logged one, List<Logged> log, Domain.Meals.Meal meal)
    {
        var (kind, document) = StoredEvent.Write(one.Event, meal);
        return new RunEventRow
        {
            Run = run,
            Sequence = one.Sequence,
            Command = one.Command.Value,
            Part = log.Count(other => other.Command == one.Command && other.Sequence < one.Sequence),
            By = one.By?.Value,
            At = one.At.ToUnixTimeMilliseconds(),
            Kind = kind,
            Document = document,
        };
    }

    /// <summary>Hands that are slower than those of a rehearsal tick later, unless the tick is one of <see cref="Said"/>.</summary>
    static bool IsTooSoon(Run run, Tap tap, DateTimeOffset now)
    {
        if (tap.Command is not RunCommand.FinishStep { Step: var id } || run.StateOf(id).Started is not { } started)
        {
            return false;
        }

        var step = run.Meal.Step(id);
        var pace = Pace.GetValueOrDefault(step.Text.Split(' ')[0], 1) * (run.Meal.Name.StartsWith("Autumn", StringComparison.Ordinal) ? id.Value switch { "potatoes-boil" => 1.5, "pork-roast" => 1.14, _ => 1 } : 1);
        return now < started.AddMinutes(run.WayOf(step).Minutes.Likely * pace * 0.95);
    }

    /// <summary>What is tapped beside what hands always tap, minutes after a step began.</summary>
    static (string Step, int After, RunCommand Command)[] Said(string meal) => meal.StartsWith("Autumn", StringComparison.Ordinal)
        ?
        [
            ("pork-roast", 60, Read("pork-roast", 20)), ("pork-roast", 90, Read("pork-roast", 39)), ("pork-roast", 115, Read("pork-roast", 54)), ("pork-roast", 135, Read("pork-roast", 63.5m)), ("pork-roast", 151, Read("pork-roast", 70)),
            ("squash-toss", 1, new RunCommand.FinishStep(new StepId("squash-toss"))), ("squash-toss", 2, new RunCommand.TakeBack(new StepId("squash-toss"))),
            ("pork-set", 1, new RunCommand.OvenStillHeats(new OvenId("oven"), 4)),
        ]
        :
        [
            ("chicken-roast", 50, Read("chicken-roast", 41)), ("chicken-roast", 75, Read("chicken-roast", 63)), ("chicken-roast", 94, Read("chicken-roast", 75)),
            ("chicken-butter", 2, new RunCommand.OvenStillHeats(new OvenId("oven"), 3)),
            ("greens-wash", 2, new RunCommand.FinishStep(new StepId("greens-wash"))), ("greens-wash", 3, new RunCommand.TakeBack(new StepId("greens-wash"))),
        ];

    static RunCommand.ReadCore Read(string step, decimal celsius) => new(new StepId(step), celsius);

    static (string Dish, int Portions)[] Left(string meal) => meal.StartsWith("Autumn", StringComparison.Ordinal) ? [("cabbage", 2), ("squash", 1)] : [("chicken", 1)];

    static (string Dish, string Verdict, string Note)[] Verdicts(string meal) => meal.StartsWith("Autumn", StringComparison.Ordinal)
        ?
        [
            ("", "", "Peel the potatoes before anybody comes. Put the pork in half an hour sooner."),
            ("cabbage", "less", "Too much for six; sharper next time."),
            ("potatoes", "more", "Gone in five minutes; they sat too long in the water and roasted slowly."),
            ("pork", "", "Crackling at its best, a little dry at the bone."),
        ]
        :
        [
            ("", "", "Light the oven before the first guest rings."),
            ("gratin", "more", "Edda asked for it again at midwinter."),
            ("greens", "never", "Nobody under ten touched it."),
        ];

    static CommandId Command(int number) => new(new Guid(number, 7, 7, new byte[8]));
}
