using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs.Rehearsing;

/// <summary>
/// What the people of a rehearsal tap. They are a little slow, take as long as the meal says work may take, now and then
/// ask for more time, tick the wrong job or forget one, and their phones drop out. All of it follows from the run's id
/// and the board, so nothing need be remembered, and a restarted server goes on with the same people.
/// </summary>
public sealed class SimulatedHands(RunId run)
{
    /// <summary>Shares of the steps: ticked too early and taken back; finished, and the tick forgotten for a while.</summary>
    const double WrongTicks = 0.05, Forgotten = 0.08;

    static readonly TimeSpan NoticesAfter = TimeSpan.FromMinutes(0.7);
    static readonly TimeSpan CouldTakeBack = NoticesAfter * 4;
    static readonly TimeSpan ForgetsFor = TimeSpan.FromMinutes(4);
    static readonly TimeSpan HostWaits = TimeSpan.FromMinutes(1.5);

    /// <summary>A rehearsal that has come to a standstill ends by itself this long after its last table time.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromHours(2);

    readonly Draws draws = new(run);

    /// <summary>What they tap at this moment. What is not taken is tapped again.</summary>
    public IEnumerable<Tap> Taps(Run state, Board board) =>
        Finishing(state, board)
            .Concat(Beginning(state, board))
            .Concat(TakingBack(state, board))
            .Concat(Answering(state, board))
            .Concat(Hosting(state, board));

    /// <summary>Since when this person's phone has dropped out; null while it is there.</summary>
    public DateTimeOffset? DroppedSince(PersonId person, DateTimeOffset now) => draws.DroppedSince(person, now);

    IEnumerable<Tap> Beginning(Run state, Board board)
    {
        foreach (var card in board.Now.Where(card => card.State == CardState.Due))
        {
            var what = card.Tend is { } tend ? $"tend {card.Step.Id} {tend.Tend} {tend.Turn}" : $"begin {card.Step.Id} {state.StateOf(card.Step.Id).Undone}";
            var since = card.Tend is null ? ReadySince(state, card.Step) : card.Starts;
            if (board.At >= since + draws.Delay(what) && WhoFor(state, board, card, mustBeFree: card.Tend is null) is { } who)
            {
                RunCommand command = card.Tend is { } turn ? new RunCommand.FinishTend(card.Step.Id, turn.Tend, turn.Turn) : new RunCommand.StartStep(card.Step.Id);
                yield return TapOf(board, what, who, command);
            }
        }
    }

    IEnumerable<Tap> Finishing(Run state, Board board)
    {
        foreach (var card in board.Now.Where(card => card.Tend is null && card.State is CardState.Running or CardState.Over))
        {
            var (id, step) = (card.Step.Id, state.StateOf(card.Step.Id));
            if (WhoFor(state, board, card, mustBeFree: false) is not { } who)
            {
                continue;
            }

            var takes = draws.Minutes(id, state.WayOf(card.Step).Minutes);
            var planned = state.MinutesOf(id);
            var isWrong = step.Undone == 0 && draws.Fraction($"wrong {id}") < WrongTicks;
            var ticks = isWrong ? takes * 0.4 : draws.Fraction($"forget {id}") < Forgotten ? takes + ForgetsFor : takes;
            if (board.At >= step.Started!.Value + ticks)
            {
                if (card.Core is { Vouched: null } core && core.Step == id && (step.Word?.Verdict != CoreVerdict.Reached || core.Wanted.Minutes > 0))
                {
                    yield return Thermometer(state, board, who, core);
                }

                yield return TapOf(board, $"finish {id} {step.Undone}", who, new RunCommand.FinishStep(id));
            }
            else if (!isWrong && step.ExtraMinutes == 0 && takes.TotalMinutes > planned + 1 && board.At >= step.Started.Value.AddMinutes(planned - 1))
            {
                yield return TapOf(board, $"more {id}", who, new RunCommand.AddTime(id, (int)Math.Ceiling(takes.TotalMinutes) - planned));
            }
        }
    }

    /// <summary>It is read once; where that is not believed of a joint nobody looked at before, the host vouches for it.</summary>
    Tap Thermometer(Run state, Board board, RunPerson who, CardCore core) => core.Readings.IsEmpty
        ? TapOf(board, $"read {core.Step}", who, new RunCommand.ReadCore(core.Step, core.Wanted.Celsius + 1))
        : TapOf(board, $"vouch {core.Step}", state.People.Values.First(person => person.Role == Role.Host), new RunCommand.VouchFor(core.Step, "rehearsed"));

    IEnumerable<Tap> TakingBack(Run state, Board board) =>
        from card in board.Done
        let id = card.Step.Id
        let step = state.StateOf(id)
        where step.Undone == 0 && draws.Fraction($"wrong {id}") < WrongTicks
            && step.Finished < step.Started + (draws.Minutes(id, state.WayOf(card.Step).Minutes) * 0.9)
            && board.At >= step.Finished + NoticesAfter && board.At < step.Finished + CouldTakeBack
        let who = WhoFor(state, board, card, mustBeFree: false)
        where who is not null
        select TapOf(board, $"back {id}", who, new RunCommand.TakeBack(id));

    IEnumerable<Tap> Answering(Run state, Board board) =>
        from call in board.Calls
        where !call.IsAcknowledged && call.Due <= board.At && board.At >= call.Due + draws.Delay($"answer {call.Id}")
        let holders = call.Step is { } step ? state.HoldersOf(step) : []
        let who = There(state, board).OrderByDescending(one => holders.Contains(one.Helper!.Value)).FirstOrDefault()
        where who is not null
        select TapOf(board, $"answer {call.Id}", who, new RunCommand.Acknowledge(call.Id));

    /// <summary>The host lets a pause end, and ends it all when it is eaten.</summary>
    IEnumerable<Tap> Hosting(Run state, Board board)
    {
        var host = state.People.Values.First(person => person.Role == Role.Host);
        if (state.Pause is { } pause && board.At >= pause.Since + HostWaits)
        {
            yield return TapOf(board, $"go on {pause.Sequence}", host, new RunCommand.GoOn());
        }

        var table = board.Courses.Max(course => course.Expected).Utc;
        var isDone = state.Meal.Steps.All(step => state.StateOf(step.Id).Finished + CouldTakeBack <= board.At);
        if (board.At >= table + HostWaits && (isDone || board.At >= table + Patience))
        {
            yield return TapOf(board, "end", host, new RunCommand.EndRun());
        }
    }

    /// <summary>When nothing but somebody's hands was wanting any more.</summary>
    static DateTimeOffset ReadySince(Run state, Step step) =>
        step.After.Select(after => state.StateOf(after.Step).Finished?.AddMinutes(after.Least))
            .Append(state.Plan.Step(step.Id).Start.Utc)
            .Max()!.Value;

    /// <summary>Whoever has it, else any grown-up; null while they are busy or their phone is away, or when it is a guest's who came in.</summary>
    RunPerson? WhoFor(Run state, Board board, BoardCard card, bool mustBeFree)
    {
        var there = There(state, board).ToList();
        var holders = card.Helpers.Where(helper => state.PersonOf(helper) is not null).ToImmutableHashSet();
        var able = there.Where(person => holders.IsEmpty ? state.HelperOf(person) is { IsChild: false } : holders.Contains(person.Helper!.Value));
        return able.FirstOrDefault(person => !mustBeFree || card.Attention != Attention.HandsOn || !IsBusy(state, board, person));
    }

    static bool IsBusy(Run state, Board board, RunPerson person) =>
        board.Now.Any(card => card.Tend is null && card.Attention == Attention.HandsOn && state.StateOf(card.Step.Id).IsRunning && card.Helpers.Contains(person.Helper!.Value));

    /// <summary>The plan's people who are in the kitchen with a phone that works.</summary>
    IEnumerable<RunPerson> There(Run state, Board board) =>
        from one in board.People
        where one.IsHereNow && one.Person is not null && state.Meal.Helpers.Any(helper => helper.Id == one.Helper)
        let person = state.People[one.Person!.Value]
        where draws.DroppedSince(person.Person, board.At) is null
        select person;

    /// <summary>Tapped again later it is another tap: what was refused once stays refused.</summary>
    Tap TapOf(Board board, string what, RunPerson who, RunCommand command) => new(draws.Command($"{what} {board.At.ToUnixTimeMilliseconds()}"), who.Person, command);
}
