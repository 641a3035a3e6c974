using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Tests;

/// <summary>
/// Plans written by hand for tests: name each step's start and hands. Courses stand at their promise, dishes in their first hold,
/// tends at their nominal times, until told otherwise.
/// </summary>
public sealed class PlanBuilder(Meal meal)
{
    readonly List<PlannedStep> steps = [];
    readonly List<PlannedTend> tends = [];
    readonly List<OvenProgramme> ovens = [];
    readonly Dictionary<DishId, (int Hold, Minute From, OvenId Oven)> warm = [];
    readonly Dictionary<CourseId, Minute> tables = meal.Courses.ToDictionary(course => course.Id, course => course.TableTime);

    public PlanBuilder Table(string course, int at)
    {
        tables[new(course)] = MealBuilder.At(at);
        return this;
    }

    /// <param name="by">Helpers, with commas between them.</param>
    /// <param name="tendedBy">Who does all its tends.</param>
    public PlanBuilder Step(string id, int start, string by = "", string? oven = null, string? grill = null, int option = -1, string? tendedBy = null)
    {
        var step = meal.Step(new(id));
        var way = step.WayOf(option);
        var at = MealBuilder.At(start);
        steps.Add(new(step.Id, at, at + way.Minutes.Likely, option,
            [.. by.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(helper => new HelperId(helper))],
            oven is null ? null : new OvenId(oven), grill is null ? null : new GrillId(grill), way.Uses.Appliances, Slack: 0));
        foreach (var (index, tend) in step.Tends.Index())
        {
            tends.AddRange(tend.Times(way.Minutes.Likely).Index()
                .Select(turn => new PlannedTend(step.Id, index, turn.Index, at + turn.Item, tend.Minutes, new(tendedBy!))));
        }

        return this;
    }

    public PlanBuilder Warm(string dish, int hold, int from, string oven)
    {
        warm[new(dish)] = (hold, MealBuilder.At(from), new(oven));
        return this;
    }

    public PlanBuilder Programme(string oven, params (int At, int Celsius)[] points)
    {
        ovens.Add(new(new(oven), [.. points.Select(point => new OvenPoint(MealBuilder.At(point.At), point.Celsius))], []));
        return this;
    }

    public ImmutableArray<OvenProgramme> Ovens => [.. ovens];

    public Plan Build() => new(
        PlanStatus.Feasible, Gap: 1, SolveMilliseconds: 0, meal.NotBefore ?? MealBuilder.Zero,
        [.. meal.Courses.Select(course => new PlannedCourse(course.Id, tables[course.Id], course.TableTime))],
        [.. steps], [.. tends], [.. meal.Dishes.Select(HoldOf)], [.. ovens],
        new(0, 0, 0, 0, 0), null, []);

    PlannedHold HoldOf(Dish dish)
    {
        var table = tables[dish.Course];
        if (warm.TryGetValue(dish.Id, out var kept))
        {
            return new(dish.Id, kept.Hold, HoldPlace.WarmOven, kept.From, table, kept.Oven);
        }

        var ids = dish.Steps.Select(step => step.Id).ToHashSet();
        return new(dish.Id, 0, dish.Holds[0].Place, steps.Where(step => ids.Contains(step.Step)).Max(step => step.End), table, null);
    }
}
