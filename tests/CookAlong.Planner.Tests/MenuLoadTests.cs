using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Planning.Menu;
using CsCheck;
using static CookAlong.Planner.Tests.Cooking;

namespace CookAlong.Planner.Tests;

public sealed class MenuLoadTests
{
    // By hand: 120 minutes before the table there are 1 x 120 shelf minutes, 240 of rings, 120 of hands.
    static Meal Supper => Meal(
        300,
        Kitchen(shelves: 1, rings: 2),
        [Cook("maren")],
        Dish("pie", OnTheTable(limit: 10), Hands("roll", 20), Alone("bake", 60, InOven(190, 210))),
        Dish("gratin", OnTheTable(limit: 30), Alone("brown", 40, InOven(150, 170)), Hands("garnish", 5)),
        Dish("broth", OnTheTable(limit: 600), Hands("chop", 30), Nearby("simmer", 90, OnRings())));

    static Hold OnTheTable(int limit) => OnTheSide(limit);

    [Fact]
    public void What_is_wanted_and_what_must_be_are_added_up()
    {
        var load = MenuLoad.Of(Supper);
        var oven = load.Rooms.Single(room => room.Kind == RoomKind.Oven);
        Assert.Equal((120, 100), (oven.Has, oven.Wants));

        // The pie may stand ten minutes; the gratin's baking may lie as early as anybody likes, since only its garnish must be near the table.
        Assert.Equal(60, oven.Must);
        Assert.Equal([("pie", 60), ("gratin", 40)], oven.Dishes.Select(dish => (dish.Dish.Value, dish.Wants)));
        Assert.Equal([0, 0, 0, 0, 15, 30, 30, 25], Enumerable.Range(0, 8).Select(i => oven.Quarters[i]));
        Assert.Equal((240, 90), load.Rooms.Where(room => room.Kind == RoomKind.Rings).Select(room => (room.Has, room.Wants)).Single());

        // Rolled 80 to 60 minutes before, garnished in the last five, chopped 120 to 90 minutes before.
        Assert.Equal((120, 55), load.Rooms.Where(room => room.Kind == RoomKind.Hands).Select(room => (room.Has, room.Wants)).Single());
    }

    [Fact]
    public void Heats_that_do_not_meet_are_named()
    {
        var clash = Assert.Single(MenuLoad.Of(Supper).Clashes);
        Assert.Equal(("pie", "gratin", 40), (clash.One.Value, clash.Other.Value, clash.Minutes));
    }

    [Fact]
    public void With_two_ovens_no_heats_clash() => Assert.Empty(MenuLoad.Of(Supper with { Kitchen = Kitchen(ovens: 2) }).Clashes);

    [Fact]
    public void No_plan_on_time_does_with_less_than_must_be()
    {
        var compared = 0;
        Gen.Int.Sample(
            seed =>
            {
                var meal = new RandomMeals(seed, mostSteps: 9, scale: 5).Next();
                var plan = new Quick.QuickPlanner().Plan(new PlanRequest(meal, new PlanLimits(TimeSpan.FromSeconds(5), Workers: 1, Deterministic: 0.05)));
                if (plan.Status == PlanStatus.None || plan.Cost.LateMinutes > 0)
                {
                    return true;
                }

                var load = MenuLoad.Of(meal);
                compared += load.Rooms.Count(room => room.Must > 0);
                return load.Rooms.All(room => room.Must <= Used(room.Kind, meal, plan, load));
            },
            iter: 200, threads: 1, print: seed => $"meal {seed}");
        Assert.True(compared > 15, $"only {compared} rooms had to be used");
    }

    static int Used(RoomKind kind, Meal meal, Plan plan, MenuLoad load) => plan.Steps.Sum(planned =>
    {
        var way = meal.Step(planned.Step).WayOf(planned.Option);
        var takes = kind switch
        {
            RoomKind.Oven => way.Uses.Oven?.Shelves ?? 0,
            RoomKind.Rings => way.Uses.Rings,
            _ => way.Attention == Attention.HandsOn ? way.People : 0,
        };
        return takes * Math.Max(0, Minute.Earlier(planned.End, load.To) - Minute.Later(planned.Start, load.From));
    });

    [Fact]
    public void The_planner_says_which_dish_to_move_or_to_cook_elsewhere()
    {
        var meal = Supper with { NotBefore = Table - 400 };
        var now = MenuHelp.Plan(meal, null, TestContext.Current.CancellationToken);
        var offers = MenuHelp.Each(meal, now, null, TestContext.Current.CancellationToken).ToList();
        Assert.Contains(offers, offer => offer.Change is PlanChange.LeaveOut);
        Assert.All(offers, offer => Assert.Empty(PlanCheck.Check(offer.Meal, offer.Plan)));
        Assert.All(offers, offer => Assert.True(MenuEase.Of(offer.Meal, offer.Plan).IsEasierThan(MenuEase.Of(meal, now))));
    }

    [Fact]
    public void What_keeps_overnight_is_offered_to_be_made_a_day_earlier()
    {
        // Hands are what is short, and most of them are for the broth.
        var broth = Dish("broth", OnTheSide(2000, bestWithin: 2000), Hands("chop", 60), Nearby("simmer", 90, OnRings()));
        var meal = Supper with { NotBefore = Table - 400, Kitchen = Kitchen(ovens: 2), Dishes = [.. Supper.Dishes.Select(dish => dish.Id == broth.Id ? broth : dish)] };
        var now = MenuHelp.Plan(meal, null, TestContext.Current.CancellationToken);
        var offers = MenuHelp.Each(meal, now, null, TestContext.Current.CancellationToken).ToList();
        var ahead = Assert.Single(offers, offer => offer.Change is PlanChange.MakeAhead);
        Assert.Equal(broth.Id, ((PlanChange.MakeAhead)ahead.Change).Dish);
        Assert.True(MenuEase.Of(ahead.Meal, ahead.Plan).KitchenDay < MenuEase.Of(meal, now).KitchenDay - 30);
    }

    [Fact]
    public void A_dish_that_another_waits_for_is_not_left_out()
    {
        var meal = Supper;
        var broth = meal.Dishes.Single(dish => dish.Id.Value == "broth");
        meal = meal with { Dishes = meal.Dishes.Replace(meal.Dishes[0], meal.Dishes[0] with { Steps = [meal.Dishes[0].Steps[0] with { After = [After("simmer")] }, meal.Dishes[0].Steps[1]] }) };
        var offers = MenuHelp.Each(meal, MenuHelp.Plan(meal, null, TestContext.Current.CancellationToken), null, TestContext.Current.CancellationToken);
        Assert.DoesNotContain(offers, offer => offer.Change is PlanChange.LeaveOut { Dish: var dish } && dish == broth.Id);
    }
}
