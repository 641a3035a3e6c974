using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests.Encodings;

/// <summary>Each rule where it bites: a meal that fits by one minute, and the same meal with one minute less.</summary>
public sealed class EncodingTests
{
    private static readonly Hold AtOnce = OnTheSide(limit: 60, bestWithin: 60);

    [Fact]
    public void An_oven_needs_its_heating_up_before_the_first_dish() =>
        FitsIn(15 + 30, Kitchen(heatUp: 12), Dish("pie", AtOnce, Alone("bake", 30, InOven(200, 210)))); // 180 degrees at 12 a minute

    [Fact]
    public void An_oven_needs_its_cooling_down_between_two_dishes_that_want_different_heat() =>
        FitsIn(15 + 30 + 5 + 30, Kitchen(heatUp: 12, coolDown: 10), // 200 down to 150
            Dish("pie", AtOnce, Alone("bake", 30, InOven(200, 210))), Dish("tart", AtOnce, Alone("blush", 30, InOven(140, 150)).Following(After("bake"))));

    [Fact]
    public void A_full_oven_keeps_the_next_tray_waiting() =>
        FitsIn(15 + 60, Kitchen(shelves: 1), Dish("pie", AtOnce, Alone("one", 30, InOven(200, 210))), Dish("tart", AtOnce, Alone("two", 30, InOven(200, 210))));

    [Fact]
    public void Two_ovens_take_a_tray_each() =>
        FitsIn(15 + 30, Kitchen(ovens: 2, shelves: 1), Dish("pie", AtOnce, Alone("one", 30, InOven(200, 210))), Dish("tart", AtOnce, Alone("two", 30, InOven(200, 210))));

    [Fact]
    public void Rings_are_counted() =>
        FitsIn(30, Kitchen(rings: 2), Dish("a", AtOnce, Alone("boil", 10, OnRings(2))), Dish("b", AtOnce, Alone("stew", 20, OnRings(1))), Dish("c", AtOnce, Alone("fry", 20, OnRings(1))));

    [Fact]
    public void An_appliance_is_one_at_a_time_where_there_is_one() =>
        FitsIn(20, Kitchen(), Dish("a", AtOnce, Alone("beat", 10, With("mixer"))), Dish("b", AtOnce, Alone("whip", 10, With("mixer"))));

    [Fact]
    public void A_grill_inside_an_oven_keeps_the_oven_empty()
    {
        var kitchen = Kitchen(heatUp: 200);
        FitsIn(1 + 20, kitchen with { Grills = [new Grill(new GrillId("grill"), kitchen.Ovens[0].Id)] },
            Dish("a", AtOnce, Alone("grill", 10, UnderGrill())), Dish("b", AtOnce, Alone("bake", 10, InOven(200, 210)).Following(After("grill", 1))));
    }

    [Fact]
    public void A_gap_keeps_its_least() =>
        FitsIn(10 + 25 + 5, Kitchen(), Dish("dough", AtOnce, Alone("knead", 10), Alone("shape", 5).Following(After("knead", least: 25))));

    [Fact]
    public void One_pair_of_hands_does_one_thing_at_a_time() =>
        FitsIn(30, Kitchen(), Dish("a", AtOnce, Hands("peel", 10)), Dish("b", AtOnce, Hands("chop", 20)));

    [Fact]
    public void Work_for_two_takes_both() =>
        FitsIn(30, Kitchen(), [Cook("a"), Cook("b")], Dish("a", AtOnce, Hands("lift", 10, people: 2)), Dish("b", AtOnce, Hands("chop", 20)));

    [Fact]
    public void A_child_is_no_help_with_what_is_not_child_safe() =>
        FitsIn(20, Kitchen(), [Cook("a"), Cook("b", isChild: true)], Dish("a", AtOnce, Hands("fry", 10)), Dish("b", AtOnce, Hands("flame", 10)), Dish("c", AtOnce, Hands("pod", 20, childSafe: true)));

    [Fact]
    public void Who_lacks_the_skill_is_no_help() =>
        FitsIn(20, Kitchen(), [Cook("a"), Cook("b") with { Can = [] }], Dish("a", AtOnce, Hands("bone", 10) with { Needs = ["knife"] }), Dish("b", AtOnce, Hands("carve", 10) with { Needs = ["knife"] }));

    [Fact]
    public void Who_is_away_is_no_help() =>
        FitsIn(10 + 15, Kitchen(), [Cook("a", available: new Window(Table - 300, Table - 15))], Dish("a", AtOnce, Hands("peel", 10)));

    [Fact]
    public void Somebody_grown_up_must_be_near() =>
        FitsIn(10 + 15, Kitchen(), [Cook("a", available: new Window(Table - 300, Table - 15)), Cook("b", isChild: true)], Dish("a", AtOnce, Nearby("watch", 10)));

    [Fact]
    public void Grown_ups_may_hand_over() =>
        FitsIn(30, Kitchen(), [Cook("a", available: new Window(Table - 300, Table - 15)), Cook("b", available: new Window(Table - 15, Table + 60))], Dish("a", AtOnce, Nearby("watch", 30)));

    [Fact]
    public void A_tend_takes_hands_from_other_work() =>
        FitsIn(20 + 2, Kitchen(), Dish("roast", AtOnce, Alone("roast", 20) with { Tends = [Every(10, length: 2, give: 0)] }), Dish("b", AtOnce, Hands("chop", 10)), Dish("c", AtOnce, Hands("peel", 10)));

    [Fact]
    public void A_rest_is_part_of_the_time() =>
        FitsIn(20 + 15, Kitchen(), Dish("roast", OnTheSide(60, 60, least: 15), Alone("roast", 20)));

    [Fact]
    public void Another_way_is_taken_where_it_saves_the_day() =>
        FitsIn(12, Kitchen(rings: 1), Dish("peas", AtOnce, Alone("steam", 20, OnRings()) with { Options = [Way(12, Attention.Unattended, With("mixer"))] }));

    [Fact]
    public void A_window_is_kept() =>
        FitsIn(40, Kitchen(), Dish("a", AtOnce, Hands("fetch", 10) with { Window = new Window(Table - 100, Table - 30) }));

    [Fact]
    public void Whom_the_host_named_does_it() =>
        FitsIn(20, Kitchen(), [Cook("a"), Cook("b")], Dish("a", AtOnce, Hands("peel", 10) with { By = [new HelperId("b")] }), Dish("b", AtOnce, Hands("chop", 10) with { By = [new HelperId("b")] }));

    [Fact]
    public void A_dish_kept_warm_takes_its_shelf() =>
        FitsIn(1 + 10 + 1 + 20, Kitchen(shelves: 1, heatUp: 200, coolDown: 200), // the pie first, then 20 minutes at 70
            Dish("stew", KeptWarm(60, 70, limit: 20, standFirst: 0, least: 20), Alone("simmer", 10, OnRings())),
            Dish("pie", AtOnce, Alone("bake", 10, InOven(200, 210))));

    private static void FitsIn(int minutes, Kitchen kitchen, params Dish[] dishes) => FitsIn(minutes, kitchen, [Cook("cook")], dishes);

    private static void FitsIn(int minutes, Kitchen kitchen, Helper[] helpers, params Dish[] dishes)
    {
        var fits = Plan(Meal(minutes, kitchen, helpers, dishes));
        var doesNot = Plan(Meal(minutes - 1, kitchen, helpers, dishes), effort: 4);

        Assert.Equal((PlanStatus.Optimal, 0), (fits.Status, fits.Cost.LateMinutes));
        Assert.True(doesNot.Status == PlanStatus.None || doesNot.Cost.LateMinutes > 0, "it fits a minute less too");
    }
}
