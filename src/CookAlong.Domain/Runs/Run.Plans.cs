using System.Collections.Immutable;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

// New plans: taken by the host or by themselves, and taken back.
public sealed partial record Run
{
    /// <summary>A step moved further than this is news to anybody.</summary>
    const int FarthestByItself = 60;

    /// <summary>What people had been told before each new plan, the last one last.</summary>
    ImmutableArray<PlanBefore> PlansBefore { get; init; } = [];

    public bool HasPlanBefore => !PlansBefore.IsEmpty;

    /// <summary>A rule of the host lets this plan be taken without being asked: everybody's next step stays theirs and moves little.</summary>
    public bool TakesByItself(Plan offered) =>
        PlanRule is { } farthest
        && PlanDifference.Of(PlanAsItStands, offered, step => StateOf(step).Started is null)
            .All(change => Math.Abs(change.Becomes - change.Was) <= farthest && change.WasBy.ToHashSet().SetEquals(change.BecomesBy));

    Decision Accept(RunCommand.AcceptPlan command) =>
        command.MadeAt < PlanBasis || command.MadeAt > Sequence ? new Refusal.PlanIsStale() : new RunEvent.PlanAccepted(command.Plan);

    /// <summary>Plans are then not taken by themselves any more: the one that was just refused would be the first.</summary>
    Decision TakeBackPlan()
    {
        if (PlansBefore is not [.., var before])
        {
            return new Refusal.NoPlanBefore();
        }

        var takenBack = new RunEvent.PlanTakenBack(AsFarAsItStillHolds(before.Plan));
        return PlanRule is null ? takenBack : new Decision.Accepted([takenBack, new RunEvent.PlanRuleSet(null)]);
    }

    Decision SetPlanRule(int? minutes) =>
        minutes is < 0 or > FarthestByItself ? new Refusal.OutOfRange("minutes", 0, FarthestByItself)
        : minutes == PlanRule ? Decision.Nothing
        : new RunEvent.PlanRuleSet(minutes);

    /// <summary>An earlier plan, with what has begun, the dishes that came back and the table times of now.</summary>
    Plan AsFarAsItStillHolds(Plan before)
    {
        bool IsAhead(StepId step) => StateOf(step).Started is null && before.Steps.Any(planned => planned.Step == step);
        Minute Served(PlannedCourse course) => Minute.Later(before.TableTime(course.Course), course.Promised);
        return before with
        {
            Courses = [.. Plan.Courses.Select(course => course with { TableTime = Served(course) })],
            Steps = [.. Plan.Steps.Select(planned => IsAhead(planned.Step) ? before.Step(planned.Step) : planned)],
            Tends = [.. before.Tends.Where(tend => Plan.Steps.Any(planned => planned.Step == tend.Step) && IsAhead(tend.Step)), .. Plan.Tends.Where(tend => !IsAhead(tend.Step))],
            Holds = [.. Plan.Holds.Select(hold =>
                (before.Holds.FirstOrDefault(one => one.Dish == hold.Dish) ?? hold) with { To = Served(Plan.Courses.Single(course => course.Course == Meal.Dishes.Single(dish => dish.Id == hold.Dish).Course)) })],
        };
    }

    Run WithNewPlan(Plan accepted, DateTimeOffset at) => WithPlan(accepted, at) with
    {
        PlansBefore = PlansBefore.Add(new PlanBefore(PlanAsItStands, Wish, Upsets, SlowOvens)),
    };

    Run WithPlanTakenBack(Plan back, DateTimeOffset at)
    {
        var next = WithPlan(back, at);
        return next with { PlansBefore = PlansBefore[..^1], SlowOvens = PlansBefore[^1].SlowOvens, Taken = next.Taken! with { IsBack = true } };
    }

    /// <param name="Plan">With the time that had been added and the hands that had changed by then.</param>
    sealed record PlanBefore(Plan Plan, PlanWish? Wish, ImmutableHashSet<string> Upsets, ImmutableDictionary<OvenId, (Minute HotAt, int Celsius)> SlowOvens);
}
