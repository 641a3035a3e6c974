using System.Collections.Immutable;
using System.Globalization;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>What stands in the ovens, on the rings and under the grills.</summary>
static class BoardPlaces
{
    public static ImmutableArray<BoardOven> Ovens(Run run, DateTimeOffset now, Expectation expected, Cards cards) =>
        [.. run.Meal.Kitchen.Ovens.Select(oven => OvenOf(run, now, expected, cards, oven))];

    public static ImmutableArray<BoardPlace> Rings(Run run, Cards cards)
    {
        var numbers = RingsOf(run);
        var slots = new BoardCard?[run.Meal.Kitchen.Rings];
        Settle(slots, numbers.Where(entry => run.StateOf(entry.Key).IsRunning).Select(entry => (cards.Of(entry.Key), entry.Value)));
        return [.. slots.Select((card, number) => new BoardPlace(number, (number + 1).ToString(CultureInfo.InvariantCulture), card))];
    }

    /// <summary>Each step's rings.</summary>
    public static ImmutableDictionary<StepId, ImmutableArray<int>> RingsOf(Run run)
    {
        var uses = run.Plan.Steps
            .Select(planned => (planned.Step, planned.Start, planned.End, run.WayOf(run.Meal.Step(planned.Step)).Uses.Rings))
            .Where(use => use.Rings > 0);
        return Places.Number(uses, run.Meal.Kitchen.Rings, run.RingsWhereItStands);
    }

    /// <summary>The shelves of each step in an oven, and of each dish kept warm there; exactly one of the two is set.</summary>
    public static ImmutableDictionary<(StepId? Step, DishId? Dish), ImmutableArray<int>> ShelvesOf(Run run, Oven oven)
    {
        var steps = run.Plan.Steps.Where(planned => planned.Oven == oven.Id)
            .Select(planned => (What: (Step: (StepId?)planned.Step, Dish: (DishId?)null), planned.Start, planned.End, ShelvesOf(run, planned)));
        var holds = run.Plan.Holds.Where(hold => hold.Place == HoldPlace.WarmOven && hold.Oven == oven.Id)
            .Select(hold => (What: (Step: (StepId?)null, Dish: (DishId?)hold.Dish), hold.From, hold.To, HoldOf(run, hold).Oven!.Shelves));
        return Places.Number(steps.Concat(holds), oven.Shelves, what => what.Step is { } step ? run.ShelvesWhereItStands(step) : null);
    }

    public static ImmutableArray<BoardPlace> Grills(Run run, Cards cards) =>
    [
        .. run.Meal.Kitchen.Grills.Select((grill, number) =>
        {
            var running = run.Plan.Steps.FirstOrDefault(planned => planned.Grill == grill.Id && run.StateOf(planned.Step).IsRunning);
            return new BoardPlace(number, grill.Id.Value, running is null ? null : cards.Of(running.Step));
        }),
    ];

    static BoardOven OvenOf(Run run, DateTimeOffset now, Expectation expected, Cards cards, Oven oven)
    {
        var trays = TraysOf(run, now, expected, cards, oven);
        var slots = new BoardTray?[oven.Shelves];
        Settle(slots, trays.Where(tray => tray.IsInside).Select(tray => (tray.Tray, tray.Shelves)));
        foreach (var next in trays.Where(tray => !tray.IsInside).OrderBy(tray => tray.Tray.Starts))
        {
            foreach (var shelf in next.Shelves.Where(shelf => slots[shelf] is null))
            {
                slots[shelf] = next.Tray;
            }
        }

        var programme = run.Plan.Ovens.FirstOrDefault(one => one.Oven == oven.Id);
        var dial = programme is null ? [] : OvenDial.Of(run, expected, programme);
        return new BoardOven(
            oven.Id,
            oven.Name,
            dial.LastOrDefault(setting => setting.At.Utc <= now).Celsius,
            dial.Where(setting => setting.At.Utc > now).Select(setting => (DialSetting?)setting).FirstOrDefault(),
            [.. slots])
        {
            Reading = run.OvenReadings.TryGetValue(oven.Id, out var readings) ? readings[^1] : null,
        };
    }

    /// <summary>Trays and dishes kept warm that are inside or still to come, each on its shelves.</summary>
    static ImmutableArray<(BoardTray Tray, bool IsInside, ImmutableArray<int> Shelves)> TraysOf(
        Run run, DateTimeOffset now, Expectation expected, Cards cards, Oven oven)
    {
        var shelves = ShelvesOf(run, oven);
        var trays = ImmutableArray.CreateBuilder<(BoardTray, bool, ImmutableArray<int>)>();
        foreach (var planned in run.Plan.Steps.Where(planned => planned.Oven == oven.Id && run.StateOf(planned.Step).Finished is null))
        {
            var card = cards.Of(planned.Step);
            trays.Add((new BoardTray(card, null, card.Starts, card.Ends), Board.IsOnTheGo(card), shelves[(planned.Step, null)]));
        }

        foreach (var hold in run.Plan.Holds.Where(hold => hold.Place == HoldPlace.WarmOven && hold.Oven == oven.Id))
        {
            var dish = run.Meal.Dishes.Single(one => one.Id == hold.Dish);
            var table = expected.Retimed.TableTimes[dish.Course].Utc;
            var done = expected.FinishedSince(dish);
            var goesIn = done > hold.From.Utc ? done.Value : hold.From.Utc;
            if (table > now)
            {
                trays.Add((new BoardTray(null, dish, goesIn, table), done is not null && goesIn <= now, shelves[(null, hold.Dish)]));
            }
        }

        return trays.ToImmutable();
    }

    /// <summary>
    /// Each to its own places; where another is still there, to any free one. More than there is room for is not
    /// drawn twice over: its card says where it is.
    /// </summary>
    static void Settle<T>(T?[] slots, IEnumerable<(T What, ImmutableArray<int> Places)> things)
        where T : class
    {
        foreach (var (what, places) in things.OrderBy(thing => thing.Places[0]))
        {
            foreach (var place in places)
            {
                var free = slots[place] is null ? place : Array.FindIndex(slots, slot => slot is null);
                if (free >= 0)
                {
                    slots[free] = what;
                }
            }
        }
    }

    static int ShelvesOf(Run run, PlannedStep planned) => run.WayOf(run.Meal.Step(planned.Step)).Uses.Oven?.Shelves ?? 1;

    static Hold HoldOf(Run run, PlannedHold planned) => run.Meal.Dishes.Single(dish => dish.Id == planned.Dish).Holds[planned.Hold];
}
