using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Calls;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace CookAlong.Web.Tests.Live;

/// <summary>Twenty-four hours of cooking on a fake clock, on two devices, while servers die and taps are lost, repeated and overtaken.</summary>
public sealed class SoakTests
{
    const int Jobs = 24;
    const int Look = 180;
    static readonly DateTimeOffset Begins = new(2026, 12, 21, 12, 0, 0, TimeSpan.Zero);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_is_lost_or_doubled_in_a_day_of_faults()
    {
        var chance = new Random(1);
        var kitchens = new List<LiveKitchen> { await LiveKitchen.StartedAsync(Quiet) };
        var rung = new ConcurrentDictionary<string, int>();
        try
        {
            var (meal, plan) = Day();
            await kitchens[0].TapAsync(kitchens[0].Host, new { kind = "endRun" });
            kitchens[0].House.Clock.SetUtcNow(Begins);
            var id = (await kitchens[0].House.Get<LiveRuns>().StartAsync(LiveKitchen.MealRow, meal, plan, Domain.Tests.Runs.SmallMeal.Host, "Maren")).Current.Id;
            var host = (await kitchens[0].House.Get<LiveRuns>().FindAsync(id))!.Current.People.Keys.Single();
            Device[] devices = [new(host, chance), new(host, chance)];
            var line = await ListenAsync(kitchens[0], id, rung);
            var clock = ClockOf(kitchens[0]);
            for (var now = Begins; now < Begins.AddHours(24); now = now.AddSeconds(Look))
            {
                var kitchen = kitchens[^1];
                kitchen.House.Clock.SetUtcNow(now);
                var live = (await kitchen.House.Get<LiveRuns>().FindAsync(id))!;
                await clock.RingAsync(live.Current, Stop);
                var seen = kitchen.House.Get<Boards>().Of(live.Current);
                Array.ForEach(devices, device => device.Look(seen));
                foreach (var device in devices)
                {
                    await device.TapAsync(live, now);
                }

                if (chance.Next(150) == 0)
                {
                    // The next server finds a call that this one has claimed, and died before it could send it.
                    var board = Board.Of(live.Current, now.AddMinutes(60));
                    if (board.Calls.FirstOrDefault(call => call.Due > now && call.Due <= board.At && !call.IsAcknowledged) is { } dying)
                    {
                        await kitchen.House.Get<DueCalls>().ClaimAsync(id, dying, now);
                    }

                    await line.InvokeAsync<long>("Clock", Stop);
                    await line.DisposeAsync();
                    var before = Describe(live.Current, now);
                    kitchens.Add(await kitchen.RestartedAsync());
                    var after = (await kitchens[^1].House.Get<LiveRuns>().FindAsync(id))!.Current;
                    Assert.Equal(before, Describe(after, now));
                    line = await ListenAsync(kitchens[^1], id, rung);
                    clock = ClockOf(kitchens[^1]);
                }
            }

            await line.InvokeAsync<long>("Clock", Stop);
            await line.DisposeAsync();
            Assert.True(kitchens.Count > 3, "no server died");
            await CheckAsync(kitchens[^1], id, devices, rung);
        }
        finally
        {
            for (var i = kitchens.Count - 1; i >= 0; i--)
            {
                await kitchens[i].DisposeAsync();
            }
        }
    }

    static async Task CheckAsync(LiveKitchen kitchen, RunId id, Device[] devices, ConcurrentDictionary<string, int> rung)
    {
        var run = (await kitchen.House.Get<EventLog>().LoadAsync(id, Stop))!;
        await using var db = kitchen.House.NewDb();
        var calls = await db.Set<CallRow>().Where(row => row.Run == id.Value).ToListAsync(Stop);
        var events = await db.Set<RunEventRow>().Where(row => row.Run == id.Value).ToListAsync(Stop);
        Assert.All(run.Meal.Steps, step => Assert.NotNull(run.StateOf(step.Id).Finished));

        // Servers: every call that came was sent, and each once.
        Assert.True(calls.Count > Jobs, $"only {calls.Count} calls came");
        Assert.All(calls, call => Assert.True(call.RungAt is not null || run.Acknowledged.ContainsKey(new CallId(call.Call)) || CallSchedule.IsSettled(run, new CallId(call.Call)), $"{call.Call} was never sent"));
        Assert.All(calls.Where(call => call.RungAt is not null), call => Assert.Equal(1, rung.GetValueOrDefault(call.Call)));

        // Devices: each rings each call once, and hears of all that it was there for.
        Assert.All(devices, device =>
        {
            Assert.All(device.Rung, one => Assert.Equal(1, one.Value));
            Assert.All(calls.Where(call => call.RungAt is { } at && device.WasThere(at)), call => Assert.True(device.Rung.ContainsKey(call.Call), $"{call.Call} did not ring"));
        });

        // The household: every answer once, and every tap that was answered with yes is there.
        Assert.All(events.Where(row => row.Kind.StartsWith("callAcknowledged", StringComparison.Ordinal)).GroupBy(row => row.Document), one => Assert.Single(one));
        var written = events.Select(row => row.Command).ToHashSet();
        Assert.All(devices.SelectMany(device => device.Taken), command => Assert.Contains(command.Value, written));
        Assert.True(devices.Sum(device => device.Faults) > 40, "there were hardly any faults");
    }

    /// <summary>Nothing of the server's moves by itself: the test says when the clock looks at the run.</summary>
    static void Quiet(IServiceCollection services)
    {
        services.AddSingleton<IMealPlanner>(new NoPlans());
        foreach (var own in services.Where(one => one.ServiceType == typeof(IHostedService) && one.ImplementationType?.Namespace?.StartsWith("CookAlong.Web.Features.Live", StringComparison.Ordinal) == true).ToList())
        {
            services.Remove(own);
        }
    }

    static CallClock ClockOf(LiveKitchen kitchen) => ActivatorUtilities.CreateInstance<CallClock>(kitchen.House.Services);

    static async Task<HubConnection> ListenAsync(LiveKitchen kitchen, RunId id, ConcurrentDictionary<string, int> rung)
    {
        var line = kitchen.Connect(kitchen.Host);
        line.On<CallNews>("Ring", call => rung.AddOrUpdate(call.CallId, 1, (_, times) => times + 1));
        await line.StartAsync(Stop);
        await line.InvokeAsync<Entered>("Enter", id.Value, Stop);
        return line;
    }

    static string Describe(Run run, DateTimeOffset now) => JsonSerializer.Serialize(Board.Of(run, now));

    /// <summary>One pair of hands; every half hour a job, and every second of them goes on a ring afterwards.</summary>
    static (Meal Meal, Plan Plan) Day()
    {
        var small = Domain.Tests.Runs.SmallMeal.Meal;
        var from = Minute.Of(Begins);
        var table = from + (24 * 60);
        var maren = small.Helpers.Single(helper => helper.Name == "Maren");
        var course = new Course(new CourseId("main"), "Main", table);
        var dishes = ImmutableArray.CreateBuilder<Dish>();
        var planned = ImmutableArray.CreateBuilder<PlannedStep>();
        for (var job = 0; job < Jobs; job++)
        {
            var (work, heat, at) = (new StepId($"work-{job}"), new StepId($"heat-{job}"), from + 5 + (job * 58));
            var steps = new List<Step> { StepOf(work, 12, Attention.HandsOn, Uses.Nothing, []) };
            planned.Add(new PlannedStep(work, at, at + 12, -1, [maren.Id], null, null, [], 20));
            if (job % 2 == 1)
            {
                steps.Add(StepOf(heat, 10, Attention.Unattended, new Uses(null, 1, null, []), [new After(work, 0, null)]));
                planned.Add(new PlannedStep(heat, at + 12, at + 22, -1, [], null, null, [], 20));
            }

            dishes.Add(new Dish(new DishId($"dish-{job}"), $"Dish {job}", course.Id, 4, [], [new Hold(HoldPlace.Side, 0, 1500, 1500, 1500, 1, null)], [.. steps]));
        }

        var meal = small with { Courses = [course], Helpers = [maren], Dishes = dishes.ToImmutable(), NotBefore = from };
        return (meal, new Plan(
            PlanStatus.Feasible, 0, 1, from, [new PlannedCourse(course.Id, table, table)], planned.ToImmutable(), [],
            [.. meal.Dishes.Select(dish => new PlannedHold(dish.Id, 0, HoldPlace.Side, table - 30, table, null))], [], new PlanCost(0, 0, 1440, 0, 0), null, []));
    }

    static Step StepOf(StepId id, int minutes, Attention attention, Uses uses, ImmutableArray<After> after) =>
        new(id, id.Value, null, null, new Way(Durations.Exactly(minutes), attention, 1, uses), [], [], false, after, [], null, null, [], null, false);

    /// <summary>Nobody plans anew: the day goes as it goes.</summary>
    sealed class NoPlans : IMealPlanner
    {
        public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default) => request.So!.Current with { Status = PlanStatus.None };
    }

    /// <summary>A screen with somebody before it: rings by its own copy of the schedule, answers, begins and finishes; its network is bad.</summary>
    sealed class Device(PersonId person, Random chance)
    {
        readonly List<Tap> outbox = [];
        readonly HashSet<string> meant = [];
        readonly List<(DateTimeOffset From, DateTimeOffset To)> away = [];
        ImmutableArray<Call> schedule = [];

        public Dictionary<string, int> Rung { get; } = [];

        public List<CommandId> Taken { get; } = [];

        public int Faults { get; private set; }

        public bool WasThere(long at) => away.All(span => DateTimeOffset.FromUnixTimeMilliseconds(at) is var then && (then < span.From || then > span.To));

        public void Look(Board board)
        {
            if (chance.Next(80) == 0)
            {
                away.Add((board.At, board.At.AddMinutes(chance.Next(5, 60))));
                Faults++;
            }

            schedule = IsAway(board.At) ? schedule : board.Calls;
            Ring(board.At);
        }

        public async Task TapAsync(LiveRun live, DateTimeOffset now)
        {
            if (!IsAway(now))
            {
                Mean(live.Current, now);
                await SendAsync(live);
            }
        }

        bool IsAway(DateTimeOffset now) => away.Any(span => now >= span.From && now < span.To);

        void Ring(DateTimeOffset now)
        {
            foreach (var call in schedule.Where(call => call.Due <= now && !call.IsAcknowledged && !Rung.ContainsKey(call.Id.Value)))
            {
                Rung[call.Id.Value] = Rung.GetValueOrDefault(call.Id.Value) + 1;
            }
        }

        /// <summary>A minute after it rang, somebody answers; a minute after it is due, somebody does it.</summary>
        void Mean(Run run, DateTimeOffset now)
        {
            var late = now.AddMinutes(-1);
            foreach (var call in schedule.Where(call => call.Due <= late && !call.IsAcknowledged && Rung.ContainsKey(call.Id.Value)))
            {
                Put($"answer {call.Id}", new RunCommand.Acknowledge(call.Id));
            }

            foreach (var step in run.Meal.Steps)
            {
                var state = run.StateOf(step.Id);
                if (state.Started is null && run.Plan.Step(step.Id).Start.Utc <= late && step.After.All(after => run.StateOf(after.Step).Finished is not null))
                {
                    Put($"start {step.Id} {state.Undone}", new RunCommand.StartStep(step.Id));
                }
                else if (state is { Finished: null } && state.Started?.AddMinutes(step.Way.Minutes.Likely) <= late)
                {
                    Put($"finish {step.Id} {state.Undone}", new RunCommand.FinishStep(step.Id));
                }
            }
        }

        void Put(string what, RunCommand command)
        {
            if (meant.Add(what))
            {
                outbox.Add(new Tap(new CommandId(LiveKitchen.NewCommand()), person, command));
            }
        }

        async Task SendAsync(LiveRun live)
        {
            if (outbox.Count > 1 && chance.Next(4) == 0)
            {
                outbox.Reverse();
                Faults++;
            }

            foreach (var tap in outbox.ToList())
            {
                var luck = chance.Next(10);
                Faults += luck < 4 ? 1 : 0;
                if (luck < 2)
                {
                    // The question is lost; it is asked again at the next look.
                    return;
                }

                for (var copy = luck == 2 ? 3 : 1; copy > 0; copy--)
                {
                    if (await live.SendAsync(tap) is Decision.Accepted { Events.IsEmpty: false })
                    {
                        Taken.Add(tap.Id);
                    }
                }

                if (luck != 3)
                {
                    outbox.Remove(tap);
                }
            }
        }
    }
}
