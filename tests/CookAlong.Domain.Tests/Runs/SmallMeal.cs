using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>
/// A goose, dumplings and beans for 15:00 (UTC), planned by hand: small enough to know by heart.
/// <code>
/// 12:20 stuff (Maren, 20)  12:40 roast (oven 180 °C, 90, baste every 30)  14:10 rest under foil 30  14:40 carve (Maren, 15)
/// 14:00 roll (Tobi, 15, child-safe)  14:15 boil (ring, 20), then the pause point; 14:45 serve (two people, 10)
/// 14:20 trim (Ivo, knife, 10)
/// </code>
/// </summary>
static class SmallMeal
{
    public static readonly StepId Stuff = new("stuff"), Roast = new("roast"), Carve = new("carve");
    public static readonly StepId Roll = new("roll"), Boil = new("boil"), Serve = new("serve"), Trim = new("trim");
    public static readonly HelperId Maren = new("maren"), Tobi = new("tobi"), Ivo = new("ivo");
    public static readonly CourseId Main = new("main");
    public static readonly OvenId Oven = new("oven");

    public static readonly PersonId Host = Person(1), TobiPhone = Person(2), IvoPhone = Person(3), Watcher = Person(4), Stranger = Person(9);

    public static PersonId Person(int number) => new(new Guid(number, 0, 0, new byte[8]));

    public static CommandId Command(int number) => new(new Guid(number, 1, 0, new byte[8]));

    /// <summary>A clock time on the day of the meal.</summary>
    public static Minute At(int hour, int minute = 0) => Minute.Of(new DateTimeOffset(2026, 12, 20, hour, minute, 0, TimeSpan.Zero));

    public static DateTimeOffset Clock(int hour, int minute = 0) => At(hour, minute).Utc;

    public static Meal Meal { get; } = new(
        "Small lunch", TimeZoneInfo.Utc, At(12),
        [new Course(Main, "Main", At(15))],
        [],
        new Kitchen([new Oven(Oven, "Oven", 3, true, 60, 250, 12, 10, 20)], 4, [new Grill(new GrillId("grill"), null)], []),
        [
            new Helper(Maren, "Maren", [], null, false),
            new Helper(Tobi, "Tobi", [], [], true),
            new Helper(Ivo, "Ivo", [new Window(At(13, 30), At(16))], ["knife"], false),
        ],
        [
            DishOf("goose", [
                StepOf(Stuff, 20, Attention.HandsOn),
                StepOf(Roast, 90, Attention.Unattended, new Uses(new OvenUse(null, 2, new CelsiusRange(170, 180, 190)), 0, null, []), after: [Stuff]) with
                {
                    Tends = [new Tend("Baste", 2, 30, null, 3, false)],
                },
                StepOf(Carve, 15, Attention.HandsOn, needs: ["carve"]) with { After = [new After(Roast, 30, null)] },
            ]),
            DishOf("dumplings", [
                StepOf(Roll, 15, Attention.HandsOn, childSafe: true),
                StepOf(Boil, 20, Attention.Unattended, new Uses(null, 1, null, []), after: [Roll]) with { PauseAfter = true },
                StepOf(Serve, 10, Attention.HandsOn, after: [Boil], people: 2, childSafe: true),
            ]),
            DishOf("beans", [StepOf(Trim, 10, Attention.HandsOn, needs: ["knife"])]),
        ]);

    /// <summary>The same with a roast that its thermometer ends; null = as it is.</summary>
    public static Meal WithCore(CoreWanted? core) => Meal with
    {
        Dishes = [.. Meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(step => step.Id == Roast ? step with { Core = core } : step)] })],
    };

    public static Plan Plan { get; } = new(
        PlanStatus.Optimal, 0, 1, At(12),
        [new PlannedCourse(Main, At(15), At(15))],
        [
            Planned(Stuff, At(12, 20), 20, Maren),
            Planned(Roast, At(12, 40), 90) with { Oven = Oven },
            Planned(Carve, At(14, 40), 15, Maren),
            Planned(Roll, At(14), 15, Tobi),
            Planned(Boil, At(14, 15), 20),
            Planned(Serve, At(14, 45), 10, Tobi, Ivo),
            Planned(Trim, At(14, 20), 10, Ivo),
        ],
        [new PlannedTend(Roast, 0, 0, At(13, 11), 2, Maren), new PlannedTend(Roast, 0, 1, At(13, 40), 2, Maren)],
        [
            new PlannedHold(new DishId("goose"), 0, HoldPlace.Side, At(14, 55), At(15), null),
            new PlannedHold(new DishId("dumplings"), 0, HoldPlace.Side, At(14, 55), At(15), null),
            new PlannedHold(new DishId("beans"), 0, HoldPlace.Side, At(14, 30), At(15), null),
        ],
        [
            new OvenProgramme(
                Oven,
                [new OvenPoint(At(12), 20), new OvenPoint(At(12, 20), 20), new OvenPoint(At(12, 34), 180), new OvenPoint(At(14, 10), 180)],
                [new DialSetting(At(12, 20), 180), new DialSetting(At(14, 10), 0)]),
        ],
        new PlanCost(0, 0, 160, 1, 0), null, []);

    static Dish DishOf(string id, ImmutableArray<Step> steps) =>
        new(new DishId(id), id, Main, 4, [], [new Hold(HoldPlace.Side, 0, 30, 40, 60, 1, null)], steps);

    static Step StepOf(
        StepId id, int minutes, Attention attention, Uses? uses = null, StepId[]? after = null, string[]? needs = null, int people = 1, bool childSafe = false) =>
        new(
            id, id.Value, null, null, new Way(Durations.Exactly(minutes), attention, people, uses ?? Uses.Nothing), [],
            [.. needs ?? []], childSafe, [.. (after ?? []).Select(step => new After(step, 0, null))], [], null, null, [], null, false);

    static PlannedStep Planned(StepId step, Minute start, int minutes, params HelperId[] helpers) =>
        new(step, start, start + minutes, -1, [.. helpers], null, null, [], 5);
}
