using System.Text.Json;
using CookAlong.Domain.Runs;
using CsCheck;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>Three devices with an outbox each, and a network that loses questions and answers and brings old ones again.</summary>
public sealed class LostAndRepeatedTaps
{
    enum Luck { Arrives, QuestionLost, AnswerLost, OldOneAgain }

    static readonly PersonId[] Devices = [Host, TobiPhone, IvoPhone];

    /// <summary>A device taps, or sends the first tap of its outbox with that luck.</summary>
    static readonly Gen<(int Device, bool Taps, int Ask, StepId Step, Luck Luck)[]> Stories = Gen.Select(
        Gen.Int[0, 2], Gen.Bool, Gen.Int[0, 6], Gen.OneOf(Stuff, Roast, Roll, Boil, Trim), Gen.Enum<Luck>()).Array[0, 120];

    [Fact]
    public void Every_command_has_its_effect_once_whatever_the_network_does() => Stories.Sample(story =>
    {
        var kitchen = Play(story);
        Assert.All(kitchen.Log.GroupBy(logged => logged.Command), one => Assert.Single(one.Select(logged => logged.At).Distinct()));
        var taken = kitchen.Log.Select(logged => logged.Command).ToHashSet();
        Assert.All(kitchen.Answers, answer => Assert.True(answer.Value is not Decision.Accepted { Events.IsEmpty: false } || taken.Contains(answer.Key.Id)));
    }, iter: 1_000);

    [Fact]
    public void A_device_s_taps_have_their_effect_in_the_order_in_which_they_were_tapped() => Stories.Sample(story =>
    {
        var kitchen = Play(story);
        Assert.All(Devices, device =>
        {
            var tapped = kitchen.Tapped[device].Select(tap => tap.Id).ToList();
            var taken = kitchen.Log.Select(logged => logged.Command).Where(tapped.Contains).Distinct().ToList();
            Assert.Equal(tapped.Where(taken.Contains), taken);
        });
    }, iter: 1_000);

    [Fact]
    public void The_board_is_the_same_as_if_nothing_had_been_lost_or_repeated() => Stories.Sample(story =>
    {
        var kitchen = Play(story);
        var calm = new Network();
        foreach (var tap in kitchen.FirstArrivals)
        {
            calm.Arrive(tap.Tap, tap.At);
        }

        Assert.Equal(Describe(calm.Run), Describe(kitchen.Run));
        Assert.Equal(Describe(kitchen.Log.Aggregate(Run.Empty(kitchen.Run.Id), (run, logged) => run.Apply(logged))), Describe(kitchen.Run));
    }, iter: 1_000);

    static string Describe(Run run) => JsonSerializer.Serialize(Board.Of(run, Clock(14, 30)));

    static Network Play((int Device, bool Taps, int Ask, StepId Step, Luck Luck)[] story)
    {
        var network = new Network();
        foreach (var (number, taps, ask, step, luck) in story)
        {
            if (taps)
            {
                network.Tap(Devices[number], CommandOf(ask, step));
            }
            else
            {
                network.Send(Devices[number], luck);
            }
        }

        foreach (var device in Devices)
        {
            while (network.Send(device, Luck.Arrives))
            {
            }
        }

        return network;
    }

    static RunCommand CommandOf(int ask, StepId step) => ask switch
    {
        0 => new RunCommand.StartStep(step),
        1 => new RunCommand.FinishStep(step),
        2 => new RunCommand.TakeBack(step),
        3 => new RunCommand.ClaimStep(step),
        4 => new RunCommand.AddTime(step, 5),
        5 => new RunCommand.HoldEverything(),
        _ => new RunCommand.GoOn(),
    };

    /// <summary>The server, which answers a tap as it was answered the first time, and what is on its way to it.</summary>
    sealed class Network
    {
        readonly Dictionary<PersonId, Queue<Tap>> outboxes = Devices.ToDictionary(device => device, _ => new Queue<Tap>());
        readonly List<Tap> old = [];
        DateTimeOffset now = Clock(12, 20);
        int ids = 5000;

        public Network()
        {
            var story = KitchenStory.Begun();
            (Run, Log) = (story.Run, []);
            Log.AddRange(story.Log);
        }

        public Run Run { get; private set; }

        public List<Logged> Log { get; }

        public Dictionary<Tap, Decision> Answers { get; } = [];

        public List<(Tap Tap, DateTimeOffset At)> FirstArrivals { get; } = [];

        public Dictionary<PersonId, List<Tap>> Tapped { get; } = Devices.ToDictionary(device => device, _ => new List<Tap>());

        public void Tap(PersonId by, RunCommand command)
        {
            var tap = new Tap(Command(++ids), by, command);
            Tapped[by].Add(tap);
            outboxes[by].Enqueue(tap);
        }

        /// <returns>False when nothing waited.</returns>
        public bool Send(PersonId by, Luck luck)
        {
            now = now.AddSeconds(20);
            if (luck == Luck.OldOneAgain)
            {
                old.ForEach(tap => Arrive(tap, now));
            }

            if (!outboxes[by].TryPeek(out var first))
            {
                return false;
            }

            if (luck != Luck.QuestionLost)
            {
                Arrive(first, now);
                old.Add(first);
                if (luck != Luck.AnswerLost)
                {
                    outboxes[by].Dequeue();
                }
            }

            return true;
        }

        public void Arrive(Tap tap, DateTimeOffset at)
        {
            if (Answers.TryGetValue(tap, out var before))
            {
                // What had no effect is remembered by the server (LiveRun), what had one by the run itself.
                Assert.True(before is not Decision.Accepted { Events.IsEmpty: false } || Run.Decide(tap, at) == Decision.Nothing);
                return;
            }

            var decision = Answers[tap] = Run.Decide(tap, at);
            FirstArrivals.Add((tap, at));
            foreach (var happened in decision is Decision.Accepted accepted ? accepted.Events : [])
            {
                var logged = new Logged(Run.Sequence + 1, tap.Id, tap.By, at, happened);
                Log.Add(logged);
                Run = Run.Apply(logged);
            }
        }
    }
}
