using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

// The run as a planner and the re-timing see it.
public sealed partial record Run
{
    /// <summary>What people were told, with the time added by hand and the hands that changed since.</summary>
    public Plan PlanAsItStands => Plan with { Steps = [.. Plan.Steps.Select(AsItStands)] };

    /// <summary>The same, with nothing into a slow oven before it is hot: what the re-timing goes by.</summary>
    internal Plan PlanAsExpected => PlanAsItStands is var plan && SlowOvens.IsEmpty ? plan : plan with { Steps = [.. plan.Steps.Select(OnceHot)] };

    PlannedStep OnceHot(PlannedStep planned) =>
        planned.Oven is { } oven && SlowOvens.TryGetValue(oven, out var slow) && planned.Start < slow.HotAt && StateOf(planned.Step).Started is null
            ? planned with { Start = slow.HotAt, End = slow.HotAt + planned.Minutes }
            : planned;

    PlannedStep AsItStands(PlannedStep planned)
    {
        var state = StateOf(planned.Step);
        return planned with
        {
            End = planned.End + state.BeyondPlan,
            Helpers = state.Holders is { IsEmpty: false } holders ? holders : planned.Helpers,
        };
    }

    /// <summary>What has begun. A running step is expected to end when its minutes are over, or now when they are.</summary>
    public ImmutableArray<StepFact> FactsAt(DateTimeOffset now) =>
    [
        .. Meal.Steps.Where(step => StateOf(step.Id).Started is not null).Select(step =>
        {
            var state = StateOf(step.Id);
            var start = Minute.Of(state.Started!.Value);
            var end = state.Finished is { } finished
                ? Minute.Of(finished)
                : Minute.Later(start + MinutesOf(step.Id), Minute.Of(now));
            var tends = Tending.Over(this, step).OrderBy(turn => turn.Tend).ThenBy(turn => turn.Turn).Select(turn => (turn.Tend, turn.Turn)).ToArray();
            return new StepFact(step.Id, start, end, state.Finished is not null, tends);
        }),
    ];

    /// <summary>What to ask a planner for a better plan from now on: added minutes are part of a step's length, work taken or given stays so, and so does what was wished of the plan.</summary>
    public PlanRequest Replan(PlanLimits limits, DateTimeOffset now) =>
        new(
            Meal with { Helpers = Helpers, Dishes = [.. Meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(AsItStands)] })] },
            limits,
            Minute.Of(now),
            new SoFar(PlanAsItStands, FactsAt(now), Plan.Ovens.ToDictionary(oven => oven.Oven, oven => CelsiusNow(oven, Minute.Of(now)))))
        {
            Cushion = Plan.Cost.Cushion,
            Leans = Plan.Cost.Leans,
        };

    /// <summary>A slow oven is as far behind as it takes to be hot when somebody said it would be.</summary>
    int CelsiusNow(OvenProgramme programme, Minute now)
    {
        var planned = CelsiusAt(programme, now);
        if (!SlowOvens.TryGetValue(programme.Oven, out var slow) || slow.HotAt <= now)
        {
            return planned;
        }

        var oven = Meal.Kitchen.Ovens.Single(one => one.Id == programme.Oven);
        var behind = slow.Celsius - (int)Math.Ceiling((slow.HotAt - now) * oven.HeatUpPerMinute);
        return Math.Min(planned, Math.Max(oven.StartsAt, behind));
    }

    /// <summary>Read off the programme, rounded; it is linear between its points.</summary>
    static int CelsiusAt(OvenProgramme oven, Minute at)
    {
        var before = oven.Points.LastOrDefault(point => point.At <= at, oven.Points[0]);
        var after = oven.Points.FirstOrDefault(point => point.At > at, before);
        return after.At <= before.At
            ? before.Celsius
            : before.Celsius + (int)Math.Round((after.Celsius - before.Celsius) * (double)(at - before.At) / (after.At - before.At));
    }

    Step AsItStands(Step step)
    {
        var state = StateOf(step.Id);
        ImmutableArray<HelperId> here = [.. (state.Holders is { IsEmpty: false } holders ? holders : step.By).Where(helper => !HasGoneBy(helper, step.Id))];
        return state.ExtraMinutes == 0
            ? step with { By = here }
            : step with { By = here, Way = Longer(step.Way, state.ExtraMinutes), Options = [.. step.Options.Select(way => Longer(way, state.ExtraMinutes))] };
    }

    static Way Longer(Way way, int minutes) => way with
    {
        Minutes = new Durations(way.Minutes.Least + minutes, way.Minutes.Likely + minutes, way.Minutes.Most + minutes),
    };
}
