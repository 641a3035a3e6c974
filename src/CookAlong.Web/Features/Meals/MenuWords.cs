using CookAlong.Domain;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning.Menu;
using CookAlong.Intake.PlanFiles;
using CookAlong.Planner;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Features.Meals;

/// <summary>What a menu asks of its kitchen, in sentences.</summary>
static class MenuWords
{
    public static string Name(RoomKind kind) => kind switch
    {
        RoomKind.Oven => "Oven shelves",
        RoomKind.Rings => "Rings",
        RoomKind.Hands => "Hands",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>"2 h 20 min wanted of 6 h".</summary>
    public static string Share(RoomLoad room) => room.Has == 0
        ? $"{Time(room.Wants)} wanted, and there is none"
        : $"{Time(room.Wants)} wanted of {Time(room.Has)}";

    /// <summary>With more than there is no plan is on time; null otherwise.</summary>
    public static string? TooMuch(RoomLoad room) =>
        room.Must > room.Has ? $"{Time(room.Must)} of it cannot lie earlier: with this menu nothing is on time." : null;

    /// <summary>Where all at once is too much, and whose it mostly is; null where it never is.</summary>
    public static string? Crowded(RoomLoad room, MenuLoad load, Meal meal)
    {
        var full = room.Quarters.Index().Where(one => one.Item * room.Quarters.Length > room.Has).Select(one => one.Index).ToList();
        var spans = full.Where(one => !full.Contains(one - 1)).Select(one => $"{Clock(one)} to {Clock(Enumerable.Range(one + 1, room.Quarters.Length).First(end => !full.Contains(end)))}");
        return full.Count == 0 ? null : $"Something must be earlier than {string.Join(" and ", spans)}. Most of it is for {Dishes(room, meal)}.";

        string Clock(int quarters) => PlaceNames.Clock(load.From + (quarters * MenuLoad.Minutes / room.Quarters.Length), meal.TimeZone);
    }

    public static string Of(HeatClash clash, Meal meal) =>
        $"{DishName(clash.One, meal)} at {Heat(clash.OneHeat)} and {DishName(clash.Other, meal)} at {Heat(clash.OtherHeat)} want the oven together for {Time(clash.Minutes)}, and it has one heat at a time.";

    /// <summary>What changes against the menu as it stands, dearest first; never empty.</summary>
    public static string Gains(MenuOffer offer, MenuEase? now)
    {
        if (now is null)
        {
            return "then there is a plan";
        }

        var then = MenuEase.Of(offer.Meal, offer.Plan);
        string[] gains =
        [
            .. Less(now.Late - then.Late, "sooner at the table"),
            .. Less(now.LastHalfHour - then.LastHalfHour, "less work in the last half hour"),
            .. now.DialChanges - then.DialChanges is > 0 and var fewer ? [MealWords.Many(fewer, "change of heat less", "changes of heat less")] : Array.Empty<string>(),
            .. Less(now.KitchenDay - then.KitchenDay, "shorter in the kitchen"),
            .. Less((int)(now.Waiting - then.Waiting), "less waiting for the food"),
        ];
        return string.Join(", ", gains);
    }

    /// <summary>Whatever takes a dish's place helps as much, where it asks none of what is short.</summary>
    public static string Change(MenuOffer offer, Meal meal) =>
        $"{ConflictWords.Change(offer.Change, meal)}{(offer.Change is Domain.Planning.PlanChange.LeaveOut ? ", or swap it for one that needs none of this" : "")}";

    /// <summary>Whom a dish less would leave without a main dish, by the names of its ingredients; null when nobody.</summary>
    public static string? Missed(MenuOffer offer, Meal meal)
    {
        var before = WhoCanEat.WithoutMainDish(meal).Select(one => (one.Guest.Name, one.Course.Id)).ToHashSet();
        var names = WhoCanEat.WithoutMainDish(offer.Meal).Where(one => !before.Contains((one.Guest.Name, one.Course.Id))).Select(one => one.Guest.Name).Distinct().ToList();
        return names.Count == 0 ? null : $"But then there is no main dish for {string.Join(" and ", names)}.";
    }

    static IEnumerable<string> Less(int minutes, string what) => minutes > 0 ? [$"{Time(minutes)} {what}"] : [];

    static string Dishes(RoomLoad room, Meal meal) => string.Join(" and ", room.Dishes.Take(2).Select(dish => DishName(dish.Dish, meal)));

    static string DishName(DishId id, Meal meal) => meal.Dishes.Single(dish => dish.Id == id).Name;

    static string Heat(CelsiusRange heat) => heat.Min == heat.Max ? $"{heat.Min} °C" : $"{heat.Min} to {heat.Max} °C";

    static string Time(int minutes) => PlanHeadline.Minutes(minutes);
}
