using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Tests.Plans;

/// <summary>A small invented midwinter lunch with its plan, set by hand: one oven, three helpers (a child, a late one), a dish from the day before.</summary>
static class AlderLane
{
    public static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo");

    static readonly OvenId TheOven = new("oven");
    static readonly GrillId TheGrill = new("grill");
    static readonly HelperId Maren = new("maren");
    static readonly HelperId Ivo = new("ivo");
    static readonly HelperId Tobi = new("tobi");

    static readonly (string Dish, string Name, string Course, Line[] Lines)[] Dishes =
    [
        ("goose", "Roast goose", "main",
        [
            new("goose-ready", "Dry, salt and stuff the goose", "09:35", 25, By: [Maren], Caution: "Raw poultry: wash hands, board and knife before anything else."),
            new("goose-roast", "Roast the goose", "10:20", 120, Oven: (1, 170, 190), Tends: [40, 80]),
            new("goose-rest", "Rest the goose under foil", "12:25", 60),
            new("goose-carve", "Carve the goose", "14:25", 20, By: [Maren], Needs: ["carve"]),
        ]),
        ("nut", "Nut roast", "main",
        [
            new("nut-mix", "Chop and mix the nut roast", "11:35", 30, By: [Ivo], Needs: ["knife"]),
            new("nut-bake", "Bake the nut roast", "13:20", 45, Oven: (1, 190, 210)),
        ]),
        ("potatoes", "Roast potatoes", "main",
        [
            new("potatoes-peel", "Peel the potatoes", "11:05", 28, By: [Maren], Needs: ["knife"]),
            new("potatoes-boil", "Parboil the potatoes", "12:12", 12, Rings: 1),
            new("potatoes-rough", "Rough up the boiled potatoes", "12:25", 5, By: [Maren], Needs: ["hot"], Caution: "Hot fat: dry hands, long cloth."),
            new("potatoes-roast", "Roast the potatoes", "12:50", 45, Oven: (1, 190, 210), Tends: [20]),
        ]),
        ("dumplings", "Herb dumplings", "main",
        [
            new("dumplings-roll", "Roll the herb dumplings", "11:00", 25, By: [Tobi], ChildSafe: true),
            new("dumplings-bake", "Bake the herb dumplings", "13:45", 25, Oven: (1, 190, 210)),
        ]),
        ("cabbage", "Braised red cabbage", "main",
        [
            new("cabbage-cut", "Shred the red cabbage", "17:00", 20, By: [Maren], Needs: ["knife"], DayBefore: true),
            new("cabbage-braise", "Braise the red cabbage", "17:20", 70, Rings: 1, DayBefore: true),
            new("cabbage-warm", "Warm the red cabbage", "14:30", 20, Rings: 1),
        ]),
        ("gravy", "Gravy", "main",
        [
            new("gravy-stock", "Simmer the stock", "11:00", 60, Rings: 1),
            new("gravy-finish", "Whisk the gravy", "14:40", 15, By: [Ivo], Needs: ["hot"], Rings: 1),
        ]),
        ("pears", "Spiced pears", "main",
        [
            new("pears-halve", "Arrange the pears in the dish", "13:00", 20, By: [Tobi], ChildSafe: true),
            new("pears-grill", "Grill the pears", "14:46", 10, Grill: true),
        ]),
        ("pudding", "Steamed pudding", "pudding",
        [
            new("pudding-mix", "Mix the pudding and tie it down", "13:05", 25, By: [Ivo]),
            new("pudding-steam", "Steam the pudding", "13:40", 140, Rings: 1),
            new("pudding-turn", "Turn out the pudding", "16:02", 6, By: [Maren], Needs: ["hot"]),
        ]),
    ];

    public static Meal Meal { get; } = new(
        "Midwinter lunch",
        Zone,
        NotBefore: null,
        [new(new("main"), "Main course", At("15:00")), new(new("pudding"), "Pudding", At("16:10"))],
        [new("Maren", 1, [], []), new("Ivo", 1, ["vegetarian"], ["nuts"]), new("Tobi", 0.6m, [], ["milk"])],
        new Kitchen([new(TheOven, "Oven", 3, Fan: true, 50, 250, 12, 5, 20)], 4, [new(TheGrill, null)], []),
        [
            new(Maren, "Maren", [], null, IsChild: false),
            new(Ivo, "Ivo", [new(At("11:30"), At("18:00"))], null, IsChild: false),
            new(Tobi, "Tobi", [], null, IsChild: true),
        ],
        [.. Dishes.Select(dish => new Dish(
            new(dish.Dish), dish.Name, new(dish.Course), 6,
            dish.Dish == "nut" ? [new("hazelnuts", 200, "g", "chopped", ["nuts"]), new("butter", 40, "g", null, ["milk"])] : [],
            dish.Dish is "goose" or "nut" or "potatoes" or "dumplings"
                ? [new(HoldPlace.WarmOven, 0, 10, 40, 90, 1, new WarmOven(new(80, 90, 100), 1, 40))]
                : [Hold.OnTheTable with { Limit = 30 }],
            [.. dish.Lines.Select((line, i) => StepOf(line, i == 0 ? null : dish.Lines[i - 1]))]))]);

    public static Plan Plan { get; } = new(
        PlanStatus.Optimal, Gap: 0, SolveMilliseconds: 640, NotBefore: At("16:30", dayBefore: true),
        [new(new("main"), At("15:00"), At("15:00")), new(new("pudding"), At("16:10"), At("16:10"))],
        [.. Lines.Select(Planned)],
        [.. Lines.SelectMany(line => (line.Tends ?? []).Select((after, tend) => new PlannedTend(new(line.Id), tend, 0, Start(line) + after, 3, after < 60 ? Maren : Ivo)))],
        [
            new(new("potatoes"), 0, HoldPlace.WarmOven, At("14:34"), At("15:00"), TheOven),
            new(new("nut"), 0, HoldPlace.WarmOven, At("14:34"), At("15:00"), TheOven),
        ],
        [
            new(TheOven,
                [new(At("10:06"), 20), new(At("10:20"), 180), new(At("12:20"), 180), new(At("12:23"), 200), new(At("14:10"), 200), new(At("14:32"), 90), new(At("15:00"), 90)],
                [new(At("10:06"), 180), new(At("12:20"), 200), new(At("14:10"), 90), new(At("15:00"), 0)]),
        ],
        new PlanCost(0, 40, 395, 3, 500), new Confidence(0.93, 1.4, [new("goose-roast")]), []);

    public static Minute At(string clock, bool dayBefore = false) =>
        LocalTime.Resolve(new DateTime(2026, 12, dayBefore ? 18 : 19).Add(TimeSpan.Parse(clock, System.Globalization.CultureInfo.InvariantCulture)), Zone)!.Value;

    static IEnumerable<Line> Lines => Dishes.SelectMany(dish => dish.Lines);

    static Minute Start(Line line) => At(line.Start, line.DayBefore);

    static PlannedStep Planned(Line line) => new(
        new(line.Id), Start(line), Start(line) + line.Minutes, -1, [.. line.By ?? []],
        line.Oven is null ? null : TheOven, line.Grill ? TheGrill : null, [], Slack: 4);

    static Step StepOf(Line line, Line? before) => new(
        new(line.Id), line.Text, How: null, line.Caution,
        new Way(
            Durations.Exactly(line.Minutes), line.By is null ? Attention.Nearby : Attention.HandsOn, 1,
            new Uses(line.Oven is { } oven ? new OvenUse(null, oven.Shelves, new(oven.Min, (oven.Min + oven.Max) / 2, oven.Max)) : null, line.Rings, line.Grill ? new GrillUse(null) : null, [])),
        line.Id == "potatoes-peel" ? [new Way(Durations.Exactly(12), Attention.HandsOn, 2, Uses.Nothing)] : [],
        [.. line.Needs ?? []], line.ChildSafe,
        before is null ? [] : [new(new(before.Id), 0, null)],
        [.. (line.Tends ?? []).Select(after => new Tend("Baste and turn", 3, null, after, 3, ChildSafe: false))],
        At: null, Window: null, By: [], Choice: null, PauseAfter: line.Id == "potatoes-rough");

    sealed record Line(
        string Id, string Text, string Start, int Minutes, HelperId[]? By = null, (int Shelves, int Min, int Max)? Oven = null, int Rings = 0, bool Grill = false,
        string[]? Needs = null, bool ChildSafe = false, int[]? Tends = null, string? Caution = null, bool DayBefore = false);
}
