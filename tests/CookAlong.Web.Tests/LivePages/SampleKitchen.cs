using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Log;

namespace CookAlong.Web.Tests.LivePages;

/// <summary>Alder Lane at 13:24 on the day of the midwinter lunch, and what else a board may have to show.</summary>
static class SampleKitchen
{
    public static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    public static readonly HelperId Maren = new("maren"), Ivo = new("ivo"), Tobi = new("tobi");

    static readonly PersonId TheHost = new(Guid.Parse("0194a000-0000-7000-8000-0000000000a1"));

    public static readonly RunId Run = new(Guid.Parse("0194a000-0000-7000-8000-000000000001"));

    public static DateTimeOffset At(int hour, int minute, int second = 0) => new(2026, 12, 20, hour, minute, second, TimeSpan.FromHours(1));

    public static Minute Min(int hour, int minute) => Minute.Of(At(hour, minute));

    public static Step Step(string id, string text, int minutes, Attention attention = Attention.HandsOn, string? how = null, string? caution = null, bool childSafe = false, Uses? uses = null, bool pauseAfter = false) =>
        new(new StepId(id), text, how, caution, new Way(Durations.Exactly(minutes), attention, 1, uses ?? Uses.Nothing), [], [], childSafe, [], [], null, null, [], null, pauseAfter);

    static Uses Oven(int shelves = 1) => new(new OvenUse(null, shelves, new CelsiusRange(170, 180, 190)), 0, null, []);

    static readonly Uses Ring = new(null, 1, null, []);

    public static readonly Step
        RoastGoose = Step("goose-roast", "Goose out, then cover it with foil", 150, Attention.Unattended, "Rest it on the board for 30 min.", "The thermometer decides: 75 °C in the thickest part of the thigh. Hot fat in the tray: two cloths, nobody small nearby.", uses: Oven()),
        Rough = Step("potatoes-rough", "Rough up the boiled potatoes", 4, how: "Drain well first. Toss them in the colander: ragged edges go crisp.", caution: "The fat in the tin is smoking hot. Dry hands, long cloth, nobody small nearby."),
        Dumplings = Step("dumplings-roll", "Roll the herb dumplings", 15, how: "Size of a walnut, 24 of them. Wash hands after.", childSafe: true),
        NutRoast = Step("nutroast-bake", "Bake the nut roast", 45, Attention.Unattended, uses: Oven()) with { Tends = [new Tend("Turn the tin round", 1, 20, null, 2, false)] },
        Potatoes = Step("potatoes-roast", "Potatoes and squash into the oven", 40, how: "Top shelf.", uses: Oven(), caution: "Hot fat spits: lower the tray away from you."),
        Stock = Step("gravy-stock", "Simmer the giblet stock", 60, Attention.Nearby, uses: Ring),
        Pudding = Step("pudding-steam", "Steam the pudding", 150, Attention.Nearby, uses: Ring, caution: "Keep the water topped up."),
        Peel = Step("celeriac-peel", "Peel the celeriac", 12, how: "Into water with a little vinegar.", pauseAfter: true),
        Greens = Step("greens-wash", "Wash the kale", 8, childSafe: true),
        Mash = Step("celeriac-slice", "Slice the celeriac thinly for the gratin", 10),
        Table = Step("table-set", "Set the table for nine", 20, childSafe: true),
        Cabbage = Step("cabbage-braise", "Braise the red cabbage", 90, Attention.Nearby, uses: Ring),
        Boil = Step("potatoes-boil", "Boil the potatoes", 12, uses: Ring),
        Mix = Step("dumplings-mix", "Mix the dumpling dough", 10, childSafe: true);

    static Dish Dish(string id, string name, string course, params Step[] steps) => new(new DishId(id), name, new CourseId(course), 9, [], [Hold.OnTheTable], [.. steps]);

    public static readonly Dish
        Goose = Dish("goose", "Goose", "main", RoastGoose),
        Nut = Dish("nut-roast", "Nut roast", "main", NutRoast),
        Roasties = Dish("potatoes", "Roast potatoes and squash", "main", Boil, Rough, Potatoes),
        Balls = Dish("dumplings", "Herb dumplings", "main", Mix, Dumplings),
        Gratin = Dish("celeriac", "Celeriac gratin", "main", Peel, Mash),
        Gravy = Dish("gravy", "Gravy", "main", Stock),
        Kale = Dish("kale", "Kale", "main", Greens, Table),
        Red = Dish("cabbage", "Red cabbage", "main", Cabbage),
        Steamed = Dish("pudding", "Steamed pudding", "pudding", Pudding);

    public static readonly Meal Meal = new(
        "Midwinter lunch at Alder Lane", Zone, null,
        [new Course(new CourseId("main"), "Main course", Min(15, 0)), new Course(new CourseId("pudding"), "Pudding", Min(16, 10))],
        [],
        new Kitchen([new Oven(new OvenId("oven"), "Oven", 3, true, 50, 250, 12, 8, 20)], 4, [new Grill(new GrillId("grill"), null)], []),
        [
            new Helper(Maren, "Maren", [], null, false),
            new Helper(Ivo, "Ivo", [new Window(Min(13, 30), Min(18, 0))], null, false),
            new Helper(Tobi, "Tobi", [], null, true),
        ],
        [Goose, Nut, Roasties, Balls, Gratin, Gravy, Kale, Red, Steamed]);

    public static BoardCard Card(Step step, CardState state, DateTimeOffset starts, DateTimeOffset ends, HelperId[]? helpers = null, bool isFree = false, CardTend? tend = null, Call? call = null) =>
        new(step, Meal.DishOf(step.Id), state, starts, ends, step.Way.Attention, [.. helpers ?? []], isFree,
            new CardPlace(step.Way.Uses.Oven is null ? null : new OvenId("oven"), step.Way.Uses.Oven?.Shelves ?? 0, step.Way.Uses.Rings, null, []), tend, call);

    public static Call Call(string id, DateTimeOffset due, CallKind kind, CallPriority priority, StepId? step = null, Tend? tend = null, DialSetting? dial = null, CourseId? course = null) =>
        new(new CallId(id), due, kind, priority, step, tend, dial, dial is null ? null : new OvenId("oven"), course, false);

    public static readonly Call GooseOut = Call("out:goose-roast", At(13, 24), CallKind.Out, CallPriority.High, RoastGoose.Id);

    public static readonly Call DialUp = Call("dial:oven:1329", At(13, 29), CallKind.Dial, CallPriority.Medium, dial: new DialSetting(Min(13, 29), 200));

    public static readonly ImmutableArray<BoardPerson> People =
    [
        new(Maren, "Maren", 0, false, new PersonId(Guid.Parse("0194a000-0000-7000-8000-0000000000a1")), true, null),
        new(Ivo, "Ivo", 1, false, null, false, Min(13, 30)),
        new(Tobi, "Tobi", 2, true, new PersonId(Guid.Parse("0194a000-0000-7000-8000-0000000000a3")), true, null),
    ];

    public static readonly RunPerson[] Guests =
    [
        new(new PersonId(Guid.Parse("0194a000-0000-7000-8000-0000000000a3")), "Tobi", Role.Helper, Tobi),
        new(new PersonId(Guid.Parse("0194a000-0000-7000-8000-0000000000a4")), "Gran", Role.Watcher, null),
    ];

    static readonly BoardCard
        GooseCard = Card(RoastGoose, CardState.Over, At(10, 54), At(13, 24), call: GooseOut),
        NutCard = Card(NutRoast, CardState.Running, At(13, 3), At(13, 48, 15)),
        PotatoCard = Card(Potatoes, CardState.Waiting, At(13, 31), At(14, 11), [Maren]),
        StockCard = Card(Stock, CardState.Running, At(12, 42), At(13, 42)),
        PuddingCard = Card(Pudding, CardState.Running, At(12, 50), At(15, 20));

    /// <summary>An ordinary busy minute: a call, two people at work, oven and rings in use.</summary>
    public static Board Busy { get; } = new(
        41, At(13, 24), false, null,
        [new(new CourseId("main"), "Main course", Min(15, 0), Min(15, 0)), new(new CourseId("pudding"), "Pudding", Min(16, 10), Min(16, 10))],
        9, null, null,
        [
            GooseCard,
            Card(Rough, CardState.Running, At(13, 22, 40), At(13, 26, 40), [Maren]),
            Card(Dumplings, CardState.Running, At(13, 15, 10), At(13, 30, 10), [Tobi]),
            NutCard, StockCard, PuddingCard,
        ],
        [new BoardOven(new OvenId("oven"), "Oven", 180, new DialSetting(Min(13, 29), 200),
            [new BoardTray(GooseCard, null, At(10, 54), At(13, 24)), new BoardTray(NutCard, null, At(13, 3), At(13, 48, 15)), new BoardTray(PotatoCard, null, At(13, 31), At(14, 11))])],
        [new BoardPlace(0, "1", StockCard), new BoardPlace(1, "2", null), new BoardPlace(2, "3", PuddingCard), new BoardPlace(3, "4", null)],
        [new BoardPlace(0, "grill", null)],
        [
            PotatoCard,
            Card(Peel, CardState.Waiting, At(13, 35), At(13, 47), [Ivo]),
            Card(Greens, CardState.Waiting, At(13, 40), At(13, 48), isFree: true),
            Card(Mash, CardState.Waiting, At(13, 51), At(14, 1), isFree: true),
            Card(Table, CardState.Waiting, At(14, 0), At(14, 20), [Tobi]),
        ],
        [new BoardWaiting(Red, HoldPlace.Fridge, At(9, 10), Min(15, 0), Min(16, 30))],
        [Card(Boil, CardState.Done, At(13, 8), At(13, 21), [Maren]), Card(Mix, CardState.Done, At(13, 0), At(13, 12), [Tobi]), Card(Cabbage, CardState.Done, At(8, 0), At(9, 10), [Maren])],
        People,
        [GooseOut, DialUp]);

    /// <summary>The minute when nothing is due.</summary>
    public static Board Calm { get; } = Busy with { Now = [NutCard, StockCard, PuddingCard], Calls = [DialUp] };

    public static Board Paused { get; } = Busy with { Pause = new BoardPause(At(13, 20), Rough.Id), Now = [NutCard, StockCard, PuddingCard], BreathingRoom = 5 };

    /// <summary>More jobs than a row holds, long names, six rings, a slip, a dial to turn.</summary>
    public static Board Crowded { get; } = Busy with
    {
        BreathingRoom = 0,
        Slip = new BoardSlip(6, [Rough.Id, Peel.Id]),
        Courses = [new(new CourseId("main"), "Main course", Min(15, 0), Min(15, 6)), new(new CourseId("pudding"), "Pudding", Min(16, 10), Min(16, 10))],
        Now =
        [
            GooseCard,
            Card(Rough, CardState.Over, At(13, 18), At(13, 22), [Maren]),
            Card(Dumplings, CardState.Running, At(13, 15, 10), At(13, 30, 10), [Tobi]),
            Card(Peel with { Text = "Peel and slice the celeriac very thinly for the gratin with the blue cheese crust" }, CardState.Due, At(13, 20), At(13, 32), [Ivo]),
            Card(NutRoast, CardState.Running, At(13, 3), At(13, 48, 15), [Maren], tend: new CardTend(0, 1, "Turn the tin round", 1), call: Call("tend:nutroast-bake:0:1", At(13, 24), CallKind.Tend, CallPriority.Medium, NutRoast.Id, new Tend("Turn the tin round", 1, null, 20, 2, false))),
            NutCard, StockCard, PuddingCard,
        ],
        Rings =
        [
            new BoardPlace(0, "1", StockCard), new BoardPlace(1, "2", Card(Boil, CardState.Waiting, At(13, 33), At(13, 45), [Maren])),
            new BoardPlace(2, "3", PuddingCard), new BoardPlace(3, "4", null), new BoardPlace(4, "5", Card(Cabbage, CardState.Over, At(11, 50), At(13, 20))), new BoardPlace(5, "6", null),
        ],
        Calls = [GooseOut, DialUp with { Due = At(13, 23) }],
    };

    /// <summary>Every job is done and the last course served; nobody has ended the meal.</summary>
    public static Board AllDone { get; } = Busy with
    {
        At = At(16, 12),
        BreathingRoom = 0,
        Now = [],
        Next = [],
        Calls = [],
        Waiting = [],
        Ovens = [Busy.Ovens[0] with { Celsius = 0, Next = null, Shelves = [null, null, null] }],
        Rings = [.. Busy.Rings.Select(ring => ring with { Card = null })],
        Done = [.. Meal.Steps.Select(step => Card(step, CardState.Done, At(12, 0), At(12, 20), [Maren]))],
    };

    public static Board Over { get; } = Busy with { IsOver = true, Now = [], Next = [], Calls = [] };

    public static OfferedPlan Offer { get; } = new(
        Guid.Parse("0194a000-0000-7000-8000-0000000000f1"), 0,
        [
            new StepChange(Peel.Id, Min(13, 35), Min(13, 30), [Ivo], [Maren]),
            new StepChange(Potatoes.Id, Min(13, 31), Min(13, 34), [Maren], [Maren]),
        ]);

    /// <summary>Just after the offered plan was taken.</summary>
    public static Board Taken { get; } = Busy with { Taken = new PlanTaken(At(13, 23), Offer.Changes) };

    /// <summary>Maren has taken the celeriac and not begun it; it was due two minutes ago.</summary>
    public static Board Held { get; } = Calm with
    {
        Now = [Card(Peel, CardState.Due, At(13, 22), At(13, 34), [Maren]) with { HeldUntil = Min(13, 27), IsClaimed = true }, .. Calm.Now],
        Next = [.. Calm.Next.Where(card => card.Step.Id != Peel.Id)],
        People = [People[0], People[1] with { Person = new PersonId(Guid.Parse("0194a000-0000-7000-8000-0000000000a2")), IsHereNow = true, HereFrom = null }, People[2]],
    };

    static readonly RestWord Rest = new(new(75, 77, 79), TimeSpan.FromMinutes(12), new(TimeSpan.FromMinutes(40), TimeSpan.FromMinutes(55), TimeSpan.FromMinutes(70)), 63, null);

    static readonly BoardCard ProbedGoose = Card(RoastGoose, CardState.Over, At(10, 54), At(13, 24), [Maren], call: GooseOut) with
    {
        Core = new CardCore(
            RoastGoose.Id, new CoreWanted(74, new Joint(Cut.WholeGoose, 5)),
            [
                new CoreReading(At(12, 50), 58, new CoreWord(CoreVerdict.NoForecast)),
                new CoreReading(At(13, 10), 67.5m, new CoreWord(CoreVerdict.Expected, At(13, 22), At(13, 27), At(13, 34)) { Rest = Rest }),
            ],
            null, 90),
    };

    /// <summary>The goose is to come out, by the clock; the thermometer has another word.</summary>
    public static Board Probed { get; } = Calm with { Now = [ProbedGoose, .. Calm.Now], Calls = [GooseOut, DialUp] };

    static readonly TendNote[] Notes =
    [
        new(new TendTurn(NutRoast.Id, 0, 0), At(13, 5), 0, IsSkipped: true),
        new(new TendTurn(NutRoast.Id, 0, 1), At(13, 12), 12, IsSkipped: false),
    ];

    /// <summary>The nut roast was turned late, and before that not at all.</summary>
    public static Board Untended { get; } = Calm with { Now = [NutCard with { TendNotes = [.. Notes] }, StockCard, PuddingCard] };

    /// <summary>Tobi’s job was to begin ten minutes ago.</summary>
    public static Board ChildDue { get; } = Busy with
    {
        Now = [Card(Dumplings, CardState.Due, At(13, 14), At(13, 29), [Tobi], call: Call("begin:dumplings-roll", At(13, 14), CallKind.Begin, CallPriority.Low, Dumplings.Id))],
    };

    public static ImmutableArray<LogLine> Happened { get; } =
    [
        Line(1, At(12, 0), "Maren", new RunEvent.PersonJoined(TheHost, "Maren", Role.Host, Maren), "Maren came in", null),
        Line(2, At(13, 12), "Maren", new RunEvent.TimeAdded(Rough.Id, 5), "Maren gave “Rough up the boiled potatoes” 5 minutes more", Taps.TakeBackTime(Rough.Id, 5)),
        Line(3, At(13, 24), null, new RunEvent.ClaimFreed(Mash.Id, Ivo), "“Slice the celeriac thinly for the gratin” is free to take: Ivo had not begun it", null),
    ];

    static LogLine Line(long sequence, DateTimeOffset at, string? by, RunEvent happened, string sentence, string? tap) =>
        new(new Logged(sequence, default, by is null ? null : TheHost, at, happened), by, "kind/1", "{}", sentence, tap);

    public static LiveView View(Board board, HelperId? me = null, Role role = Role.Host, OfferedPlan? offer = null, ScreensHere? screens = null) =>
        new(Run, Meal, board, TheHost, role, me, offer, screens ?? Screens);

    /// <summary>The tablet, armed.</summary>
    public static ScreensHere Screens { get; } = new([new ScreenHere(TheHost, new ScreenState(IsBoard: true, IsArmed: true, IsAwake: true))], _ => At(13, 24));

    /// <summary>The tablet, silent; nothing is heard of anybody else since ten past.</summary>
    public static ScreensHere Unheard { get; } = new([new ScreenHere(TheHost, ScreenState.Unknown)], _ => At(13, 10));
}
