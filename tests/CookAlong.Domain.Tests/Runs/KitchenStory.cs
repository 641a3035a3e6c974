using System.Collections.Immutable;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>Given what happened, when somebody taps, then this follows.</summary>
sealed class KitchenStory
{
    readonly List<Logged> log = [];
    DateTimeOffset now = SmallMeal.Clock(12, 20);
    Decision? answer;
    int taps;

    public Run Run { get; private set; } = Run.Empty(new RunId(new Guid(7, 0, 0, new byte[8])));

    public IReadOnlyList<Logged> Log => log;

    /// <summary>A run that Maren has just begun, with Tobi, Ivo and a watcher in it.</summary>
    public static KitchenStory Begun() => OnlyHost()
        .Given(new RunEvent.PersonJoined(SmallMeal.TobiPhone, "Tobi", Role.Helper, SmallMeal.Tobi))
        .Given(new RunEvent.PersonJoined(SmallMeal.IvoPhone, "Ivo", Role.Helper, SmallMeal.Ivo))
        .Given(new RunEvent.PersonJoined(SmallMeal.Watcher, "Gran", Role.Watcher, null));

    public static KitchenStory OnlyHost() =>
        new KitchenStory().Given([.. Run.Start(SmallMeal.Meal, SmallMeal.Plan, SmallMeal.Host, "Maren", SmallMeal.Maren)]);

    public KitchenStory At(int hour, int minute = 0)
    {
        now = SmallMeal.Clock(hour, minute);
        return this;
    }

    public KitchenStory Given(params RunEvent[] events) => By(SmallMeal.Host, SmallMeal.Command(1000 + ++taps), events);

    public KitchenStory Finished(params StepId[] steps) => Given([.. steps.Select(step => new RunEvent.StepFinished(step))]);

    /// <summary>Decides and, when accepted, applies.</summary>
    public KitchenStory When(PersonId? by, RunCommand command, int? id = null)
    {
        var tap = new Tap(SmallMeal.Command(id ?? 2000 + ++taps), by, command);
        answer = Run.Decide(tap, now);
        return answer is Decision.Accepted accepted ? By(by, tap.Id, accepted.Events) : this;
    }

    public KitchenStory Then(params RunEvent[] events)
    {
        var accepted = Assert.IsType<Decision.Accepted>(answer);
        Assert.Equal(events, accepted.Events);
        return this;
    }

    public void Refused(Refusal why) => Assert.Equal(new Decision.Refused(why), answer);

    public Board Board() => CookAlong.Domain.Runs.Board.Of(Run, now);

    public ImmutableArray<Call> Calls() => CallSchedule.Of(Run, now);

    KitchenStory By(PersonId? by, CommandId command, IEnumerable<RunEvent> events)
    {
        foreach (var happened in events)
        {
            var logged = new Logged(Run.Sequence + 1, command, by, now, happened);
            log.Add(logged);
            Run = Run.Apply(logged);
        }

        return this;
    }
}
