using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

// Whatever was tapped can be taken back for as long as the run lasts; a step's own tick is among what may be done to steps.
public sealed partial record Run
{
    /// <summary>The table times of each course before it was moved, the last one last.</summary>
    ImmutableDictionary<CourseId, ImmutableArray<TableBefore>> Tables { get; init; } = ImmutableDictionary<CourseId, ImmutableArray<TableBefore>>.Empty;

    ImmutableArray<TableBefore> TablesBefore(CourseId course) => Tables.GetValueOrDefault(course, []);

    Decision TakeBackTime(Step step, int minutes, RunPerson who)
    {
        var state = StateOf(step.Id);
        return state.Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
            : minutes < 1 || minutes > state.ExtraMinutes ? new Refusal.NothingToTakeBack()
            : ObjectionTo(step, who) is { } objection ? objection
            : new RunEvent.TimeTakenBack(step.Id, minutes);
    }

    Decision TakeBackTend(Step step, int tend, int turn, RunPerson who)
    {
        if (StateOf(step.Id).Finished is { } end)
        {
            return new Refusal.AlreadyFinished(step.Id, end);
        }

        if (tend < 0 || tend >= step.Tends.Length || !TendsDone.ContainsKey(new TendTurn(step.Id, tend, turn)))
        {
            return new Refusal.NothingToTakeBack();
        }

        return ObjectionTo(step, step.Tends[tend], who) is { } objection ? objection : new RunEvent.TendTakenBack(step.Id, tend, turn);
    }

    /// <summary>A call whose matter is settled does not ring again.</summary>
    Decision TakeBackAnswer(CallId call, DateTimeOffset now) =>
        !Acknowledged.ContainsKey(call) ? new Refusal.NothingToTakeBack()
        : CallSchedule.Of(this, now).Any(one => one.Id == call) ? new RunEvent.CallTakenBack(call)
        : new Refusal.UnknownCall(call);

    Decision TakeBackTable(CourseId course, DateTimeOffset now) =>
        TablesBefore(course) is not [.., var before] ? new Refusal.NothingToTakeBack()
        : before.Table <= Minute.Of(now) ? new Refusal.TableTimePast(course)
        : new RunEvent.TableMovedBack(course, before.Table);

    /// <summary>The calls of the shorter time were answered, if at all, before it was longer: they ring again.</summary>
    Run WithTimeTakenBack(StepId step, int minutes)
    {
        var next = WithStep(step, state => state with { ExtraMinutes = state.ExtraMinutes - minutes });
        var state = next.StateOf(step);
        return next with { Acknowledged = Acknowledged.RemoveRange([CallIds.Out(step, state), CallIds.Over(step, state)]) };
    }

    Run WithTendTakenBack(TendTurn turn) => this with
    {
        TendsDone = TendsDone.Remove(turn),
        Acknowledged = Acknowledged.Remove(CallIds.Tend(turn, StateOf(turn.Step))),
    };

    Run WithTableMoved(CourseId course, Minute to)
    {
        var before = new TableBefore(Meal.Courses.Single(one => one.Id == course).TableTime, Plan.TableTime(course));
        return WithTable(course, to, Minute.Later(to, Plan.TableTime(course))) with { Tables = Tables.SetItem(course, TablesBefore(course).Add(before)) };
    }

    /// <summary>Served as it was to be before the move, unless a new plan has been taken since.</summary>
    Run WithTableMovedBack(CourseId course, Minute to)
    {
        var before = TablesBefore(course)[^1];
        return WithTable(course, to, before.Served ?? Minute.Later(to, Plan.TableTime(course))) with { Tables = Tables.SetItem(course, TablesBefore(course)[..^1]) };
    }

    /// <param name="Served">By the plan of then; null once another plan was taken.</param>
    sealed record TableBefore(Minute Table, Minute? Served);
}
