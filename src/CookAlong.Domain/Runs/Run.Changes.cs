using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

// What upsets a plan while it is cooked: hands that go, a dish that is left out, a table time that moves, a slow oven.
public sealed partial record Run
{
    /// <summary>How far a table time may be moved at once, in minutes.</summary>
    const int FarthestTable = 240;

    /// <summary>How long from now somebody may say that they go, in minutes.</summary>
    const int LongestStay = 600;

    const int LongestHeatUp = 60;

    /// <summary>When hands that were planned for go; who goes later than their work is among them too.</summary>
    public ImmutableDictionary<HelperId, Minute> Leaving { get; private init; } = ImmutableDictionary<HelperId, Minute>.Empty;

    /// <summary>Ovens that are behind the plan's programme, until a new plan is taken.</summary>
    public ImmutableDictionary<OvenId, (Minute HotAt, int Celsius)> SlowOvens { get; private init; } = ImmutableDictionary<OvenId, (Minute, int)>.Empty;

    /// <summary>Planned for, or held by, somebody who will have gone by then.</summary>
    bool HasGoneBy(HelperId helper, StepId step) =>
        StateOf(step).Started is null && Leaving.TryGetValue(helper, out var from) && Plan.Step(step).End > from;

    Decision Leave(HelperId helper, int inMinutes, DateTimeOffset now) =>
        Helpers.All(one => one.Id != helper) ? new Refusal.UnknownHelper(helper)
        : inMinutes is < 0 or > LongestStay ? new Refusal.OutOfRange("minutes", 0, LongestStay)
        : new RunEvent.HelperLeft(helper, Minute.Of(now) + inMinutes);

    Decision MoveTable(CourseId id, int minutes, DateTimeOffset now)
    {
        if (Meal.Courses.FirstOrDefault(course => course.Id == id) is not { } course)
        {
            return new Refusal.UnknownCourse(id);
        }

        return minutes is 0 or < -FarthestTable or > FarthestTable ? new Refusal.OutOfRange("minutes", -FarthestTable, FarthestTable)
            : course.TableTime + minutes <= Minute.Of(now) ? new Refusal.TableTimePast(id)
            : new RunEvent.TableMoved(id, course.TableTime + minutes);
    }

    /// <summary>What it is heating up to is what its dial was last to be turned to, or else will be first.</summary>
    Decision StillHeats(OvenId id, int minutes, DateTimeOffset now)
    {
        if (Plan.Ovens.FirstOrDefault(oven => oven.Oven == id) is not { } programme)
        {
            return new Refusal.UnknownOven(id);
        }

        var minute = Minute.Of(now);
        var heats = programme.Dial.Where(setting => setting.Celsius > 0).ToList();
        return minutes is < 1 or > LongestHeatUp ? new Refusal.OutOfRange("minutes", 1, LongestHeatUp)
            : heats.Count == 0 ? new Refusal.UnknownOven(id)
            : new RunEvent.OvenBehind(id, minute + minutes, heats.LastOrDefault(setting => setting.At <= minute, heats[0]).Celsius);
    }

    Run WithLeft(HelperId helper, Minute from) => this with
    {
        Leaving = Leaving.SetItem(helper, from),
        Helpers = [.. Helpers.Select(one => one.Id == helper ? one with { Available = Until(AsPlanned(helper), from) } : one)],
    };

    /// <summary>Empty = always, as for hands nobody planned for.</summary>
    ImmutableArray<Window> AsPlanned(HelperId helper) => Meal.Helpers.FirstOrDefault(one => one.Id == helper)?.Available ?? [];

    static ImmutableArray<Window> Until(ImmutableArray<Window> here, Minute end)
    {
        var first = new Minute(0);
        ImmutableArray<Window> all = here.IsEmpty ? [new Window(first, end)] : here;
        ImmutableArray<Window> left = [.. all.Where(window => window.From < end).Select(window => window with { To = Minute.Earlier(window.To, end) })];

        // No window at all would mean always.
        return left.IsEmpty ? [new Window(first, first)] : left;
    }

    Run WithStayed(HelperId helper) => this with
    {
        Leaving = Leaving.Remove(helper),
        Helpers = [.. Helpers.Select(one => one.Id == helper ? one with { Available = AsPlanned(helper) } : one)],
    };

    /// <summary>Until a new plan is taken the old one stands, and a sooner table is served no sooner than it says.</summary>
    Run WithTable(CourseId id, Minute to, Minute served)
    {
        var dishes = Meal.Dishes.Where(dish => dish.Course == id).Select(dish => dish.Id).ToHashSet();
        return this with
        {
            Meal = Meal with { Courses = [.. Meal.Courses.Select(course => course.Id == id ? course with { TableTime = to } : course)] },
            Plan = Plan with
            {
                Courses = [.. Plan.Courses.Select(course => course.Course == id ? new(id, served, to) : course)],
                Holds = [.. Plan.Holds.Select(hold => dishes.Contains(hold.Dish) ? hold with { To = served } : hold)],
            },
        };
    }

    Minute ExpectedEnd(StepId step) => StateOf(step).Started is { } started
        ? Minute.Of(started) + MinutesOf(step)
        : Plan.Step(step).End + StateOf(step).BeyondPlan;
}
