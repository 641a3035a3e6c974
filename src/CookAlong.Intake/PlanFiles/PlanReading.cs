using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.PlanFiles;

internal sealed class PlanReading(Meal meal, TimeZoneInfo zone)
{
    // Generous: a file may hold a bad plan, and the check shall say so.
    private const int Many = 20_000;

    public static IReadOnlyDictionary<string, PlanStatus> Statuses { get; } = new Dictionary<string, PlanStatus>(StringComparer.Ordinal)
    {
        ["optimal"] = PlanStatus.Optimal,
        ["feasible"] = PlanStatus.Feasible,
        ["none"] = PlanStatus.None,
    };

    public Plan Plan(Place root)
    {
        if (!root.Has("status"))
        {
            root.NoteMissing("status", "Write one of: optimal, feasible, none.");
        }

        var status = root.OneOf("status", Statuses) ?? PlanStatus.None;
        ImmutableArray<PlannedCourse> courses = [.. root.Objects("courses", 20).Select(Course)];
        ImmutableArray<PlannedStep> steps = [.. root.Objects("steps", Many).Select(Step)];
        ImmutableArray<OvenProgramme> ovens = [.. root.Objects("ovenProgramme", 10).Select(Programme)];
        return new Plan(
            status,
            Fraction(root, "gap"),
            root.Whole("solveMilliseconds", 0, int.MaxValue, fallback: 0),
            root.Time("notBefore", zone) ?? Beginning(steps, ovens),
            courses,
            steps,
            Tends(root, steps),
            [.. root.Objects("holds", 200).Select(Hold)],
            ovens,
            Cost(root),
            root.Object("confidence") is { } confidence ? ConfidenceJson.Read(confidence) : null,
            [.. root.Objects("conflicts", 100).Select(Conflict)]);
    }

    /// <summary>Where a file from elsewhere names no first minute: the meal's, or that of the earliest thing planned.</summary>
    private Minute Beginning(ImmutableArray<PlannedStep> steps, ImmutableArray<OvenProgramme> ovens) =>
        meal.NotBefore
        ?? steps.Select(step => step.Start).Concat(ovens.SelectMany(oven => oven.Points).Select(point => point.At)).DefaultIfEmpty(meal.FirstTableTime).Min();

    private PlannedCourse Course(Place course)
    {
        var id = new CourseId(course.Id("id"));
        var table = course.RequiredTime("tableTime", zone);
        return new PlannedCourse(id, table, course.Time("promised", zone) ?? meal.Courses.FirstOrDefault(one => one.Id == id)?.TableTime ?? table);
    }

    private PlannedStep Step(Place step)
    {
        var (start, end) = (step.RequiredTime("start", zone), step.RequiredTime("end", zone));
        if (end < start && end.SinceEpoch > 0)
        {
            step.Note("end", "The step ends before it starts.", "Let it end later.");
        }

        return new PlannedStep(
            new(step.Id("step")),
            start,
            end,
            step.Whole("option", -1, 100, fallback: -1),
            [.. step.Texts("helpers", 50).Select(helper => new HelperId(helper.Text))],
            Id(step, "oven") is { } oven ? new OvenId(oven) : null,
            Id(step, "grill") is { } grill ? new GrillId(grill) : null,
            Appliances(step),
            step.Whole("slackMinutes", int.MinValue, int.MaxValue, fallback: 0));
    }

    private static ImmutableArray<ApplianceId> Appliances(Place step) =>
        step.Has("appliances") ? [.. step.Texts("appliances", 50).Select(appliance => new ApplianceId(appliance.Text))]
        : Id(step, "appliance") is { } appliance ? [new ApplianceId(appliance)]
        : [];

    private ImmutableArray<PlannedTend> Tends(Place root, ImmutableArray<PlannedStep> steps)
    {
        var guess = new TendGuess(meal, steps);
        var tends = root.Objects("tends", Many).Select(tend =>
        {
            var step = new StepId(tend.Id("step"));
            var (at, minutes) = (tend.RequiredTime("at", zone), tend.Whole("minutes", 1, HoldReading.Longest));
            var (number, turn) = tend.Has("tend") || tend.Has("turn")
                ? (tend.Whole("tend", 0, 100, fallback: 0), tend.Whole("turn", 0, Many, fallback: 0))
                : guess.Of(step, at, minutes);
            return new PlannedTend(step, number, turn, at, minutes, new(tend.Id("helper")));
        });
        return [.. tends];
    }

    private PlannedHold Hold(Place hold)
    {
        var dish = new DishId(hold.Id("dish"));
        if (!hold.Has("place"))
        {
            hold.NoteMissing("place", $"Write one of: {string.Join(", ", HoldReading.Places.Keys)}.");
        }

        var place = hold.OneOf("place", HoldReading.Places) ?? HoldPlace.Table;
        var first = meal.Dishes.FirstOrDefault(one => one.Id == dish)?.Holds.Index().FirstOrDefault(one => one.Item.Place == place).Index ?? 0;
        return new PlannedHold(
            dish,
            hold.Whole("hold", 0, 100, fallback: first),
            place,
            hold.RequiredTime("from", zone),
            hold.RequiredTime("to", zone),
            Id(hold, "oven") is { } oven ? new OvenId(oven) : null);
    }

    private OvenProgramme Programme(Place programme) => new(
        new(programme.Id("oven")),
        [.. programme.Objects("points", Many).Select(point => new OvenPoint(point.RequiredTime("at", zone), Celsius(point)))],
        [.. programme.Objects("dial", Many).Where(dial => dial.Has("celsius")).Select(dial => new DialSetting(dial.RequiredTime("at", zone), Celsius(dial)))]);

    private static int Celsius(Place point) => point.Whole("celsius", KitchenReading.Coldest, KitchenReading.Hottest);

    private static PlanCost Cost(Place root) => root.Object("cost") is not { } cost
        ? new PlanCost(0, 0, 0, 0, 0)
        : new PlanCost(
            cost.Whole("lateMinutes", 0, int.MaxValue, fallback: 0),
            cost.Long("waiting"),
            cost.Whole("kitchenMinutes", 0, int.MaxValue, fallback: 0),
            cost.Whole("ovenChanges", 0, int.MaxValue, fallback: 0),
            cost.Long("objective"))
        {
            Cushion = cost.Whole("cushion", 0, HoldReading.Longest, fallback: PlanRequest.UsualCushion),
            Leans = LeanWords.Read(cost),
        };

    private Conflict Conflict(Place conflict)
    {
        if (conflict.Object("change") is { } change)
        {
            return new Conflict(ChangeJson.Read(change, zone), conflict.OptionalWhole("gainMinutes", 0, int.MaxValue));
        }

        conflict.NoteMissing("change", "Add the change in machine-readable form.");
        return new Conflict(new PlanChange.AddOven(), null);
    }

    internal static double Fraction(Place place, string name) => place.Real(name, 0, 1);

    private static string? Id(Place place, string name) => place.Member(name)?.AsText(Place.LongestId);
}
