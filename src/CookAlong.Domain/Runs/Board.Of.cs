using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

public sealed partial record Board
{
    /// <summary>Long enough for hands that are in the dough to come and look.</summary>
    static readonly TimeSpan TakenIsNewsFor = TimeSpan.FromMinutes(10);

    /// <summary>The board of a run that has begun, at this moment.</summary>
    public static Board Of(Run run, DateTimeOffset now)
    {
        var expected = new Expectation(run, now);
        var calls = CallSchedule.Of(run, now, expected);
        var cards = new Cards(run, now, expected, calls);
        var steps = run.Meal.Steps.Select(cards.Of).ToArray();
        var tends = steps.Where(IsOnTheGo).SelectMany(card => cards.TendsOf(card.Step)).ToArray();
        var isOver = run.Ended is not null;
        return new Board(
            run.Sequence,
            now,
            isOver,
            run.Pause is { } pause ? new BoardPause(pause.Since, pause.After) : null,
            [.. run.Meal.Courses.Select(course => new BoardCourse(course.Id, course.Name, course.TableTime, expected.Retimed.TableTimes[course.Id]))],
            expected.Retimed.BreathingRoom,
            isOver ? null : SlipOf(run, expected, steps),
            isOver ? null : TakenOf(run, now),
            isOver ? [] : [.. steps.Where(card => IsOnTheGo(card) || card.State == CardState.Due).Concat(tends.Where(card => card.State == CardState.Due)).OrderBy(Urgency).ThenBy(card => card.Ends)],
            BoardPlaces.Ovens(run, now, expected, cards),
            BoardPlaces.Rings(run, cards),
            BoardPlaces.Grills(run, cards),
            isOver ? [] : [.. steps.Where(card => card.State == CardState.Waiting).Concat(tends.Where(card => card.State == CardState.Waiting)).OrderBy(card => card.Starts).ThenBy(card => card.Ends)],
            WaitingOf(run, now, expected),
            [.. steps.Where(card => card.State == CardState.Done).OrderByDescending(card => card.Ends)],
            PeopleOf(run, now),
            [.. calls.Where(call => !(call.Due <= now && call.IsAcknowledged))])
        {
            Leaving = [.. run.Leaving.Keys],
            Resting = isOver ? [] : [.. run.Resting(expected, now)],
            Standing = isOver ? [] : [.. run.Standing(expected, now)],
            LeftOut = [.. run.Menu.Where(dish => run.LeftOut.ContainsKey(dish.Id))],
            HasPlanBefore = run.HasPlanBefore,
            PlanRule = run.PlanRule,
        };
    }

    internal static bool IsOnTheGo(BoardCard card) => card.State is CardState.Running or CardState.Over;

    /// <summary>What can burn first, then what is late, then what is to be begun, then what goes well.</summary>
    static int Urgency(BoardCard card) => (card.Call?.Priority, card.State) switch
    {
        (CallPriority.High, _) => 0,
        (CallPriority.Medium, _) => 1,
        (_, CardState.Over) => 2,
        (_, CardState.Due) => 3,
        _ => 4,
    };

    /// <summary>Nothing to say while every table time people were told still holds, even where the plan itself was late.</summary>
    static BoardSlip? SlipOf(Run run, Expectation expected, IReadOnlyList<BoardCard> steps)
    {
        var hasSlipped = run.Plan.Courses.Any(course => expected.Retimed.TableTimes[course.Course] > course.TableTime);
        if (!hasSlipped)
        {
            return null;
        }

        // A step is a cause when it could go on and is behind by itself, not by what it waits for.
        int Behind(StepId step) => expected.Retimed.Steps[step].End - run.Plan.Step(step).End - run.Plan.Step(step).Slack;
        var causes = steps.Where(card => (IsOnTheGo(card) || card.State == CardState.Due) && Behind(card.Step.Id) > 0)
            .OrderByDescending(card => Behind(card.Step.Id))
            .Select(card => card.Step.Id);
        return new BoardSlip(run.Meal.Courses.Max(course => expected.Retimed.TableTimes[course.Id] - course.TableTime), [.. causes]);
    }

    static PlanTaken? TakenOf(Run run, DateTimeOffset now) =>
        run.Taken is { } taken && now - taken.At < TakenIsNewsFor
            ? taken with { Changes = [.. taken.Changes.Where(change => run.StateOf(change.Step).Started is null)] }
            : null;

    /// <summary>A dish waits from its last step until its table time has come.</summary>
    static ImmutableArray<BoardWaiting> WaitingOf(Run run, DateTimeOffset now, Expectation expected) =>
    [
        .. from dish in run.Meal.Dishes
           let since = expected.FinishedSince(dish)
           let table = expected.Retimed.TableTimes[dish.Course]
           where since is not null && table.Utc > now
           let planned = run.Plan.Holds.FirstOrDefault(hold => hold.Dish == dish.Id)
           let hold = dish.Holds[planned?.Hold ?? 0]
           orderby table, since
           select new BoardWaiting(dish, hold.Place, since.Value, table, Minute.Of(since.Value) + hold.Limit),
    ];

    /// <summary>The meal's helpers, and hands that walked in while they are here or have work to their name.</summary>
    static ImmutableArray<BoardPerson> PeopleOf(Run run, DateTimeOffset now)
    {
        var minute = Minute.Of(now);
        var holders = run.Meal.Steps.SelectMany(step => run.HoldersOf(step.Id)).Concat(run.Meal.Helpers.Select(helper => helper.Id)).ToHashSet();
        return
        [
            .. from entry in run.Helpers.Select((helper, mark) => (Helper: helper, Mark: mark))
               let person = run.PersonOf(entry.Helper.Id)
               where person is not null || holders.Contains(entry.Helper.Id)
               let isHere = entry.Helper.IsHere(minute, minute + 1)
               let hereFrom = entry.Helper.Available.Where(window => window.From > minute).Select(window => (Minute?)window.From).FirstOrDefault()
               select new BoardPerson(
                   entry.Helper.Id, entry.Helper.Name, entry.Mark, entry.Helper.IsChild, person?.Person, isHere, isHere ? null : hereFrom),
        ];
    }
}
