using System.Diagnostics;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Features.Meals;

/// <summary>Meals in sentences.</summary>
public static class MealWords
{
    /// <summary>"Saturday 19 December 2026".</summary>
    public static string Day(Minute at, TimeZoneInfo zone) => LocalTime.Show(at, zone).ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"Saturday 19 December 2026: Main course at 15:00, Pudding at 16:10."</summary>
    public static string TableTimes(Meal meal)
    {
        var days = meal.Courses.OrderBy(course => course.TableTime).GroupBy(course => Day(course.TableTime, meal.TimeZone));
        return string.Join(" ", days.Select(day => $"{day.Key}: {string.Join(", ", day.Select(course => $"{course.Name} at {PlaceNames.Clock(course.TableTime, meal.TimeZone)}"))}."));
    }

    public static string Size(Meal meal) => $"{Many(meal.Dishes.Length, "dish", "dishes")} for {Many(meal.Guests.Length, "guest", "guests")}, {Many(meal.Helpers.Length, "pair of hands", "pairs of hands")}";

    /// <summary>Null when it was kept.</summary>
    public static string? WhyNotKept(MealEdit edit) => edit switch
    {
        MealEdit.Kept => null,
        MealEdit.Refused refused => string.Join(" ", refused.Errors.Take(3).Select(error => $"{error.Problem} {error.Remedy}")) + " Nothing was changed.",
        MealEdit.Outdated => "Somebody else changed this meal a moment ago. It is shown as it is now; please make your change again.",
        _ => throw new UnreachableException(),
    };

    public static string Of(Oven oven) =>
        $"{oven.Name}: {Many(oven.Shelves, "shelf", "shelves")}, {(oven.Fan ? "fan" : "conventional")}, {oven.Min}–{oven.Max} °C, "
        + string.Create(CultureInfo.InvariantCulture, $"warms {oven.HeatUpPerMinute:0.#} °C and cools {oven.CoolDownPerMinute:0.#} °C a minute");

    public static string Of(WakingHours hours) => string.Create(CultureInfo.InvariantCulture, $"Up from {hours.Up:HH:mm} to {hours.Bed:HH:mm}; nobody works ahead at night");

    public static string Of(Grill grill, Kitchen kitchen) =>
        grill.InsideOven is { } inside ? $"Grill inside {PlaceNames.The(kitchen.Ovens.Single(oven => oven.Id == inside))}: one or the other" : "Grill of its own";

    public static string Of(Appliance appliance) => appliance.Count == 1 ? PlaceNames.Of(appliance.Id) : $"{PlaceNames.Of(appliance.Id)} × {appliance.Count}";

    public static string Skills(Helper helper) => helper.Can is null ? "can do everything" : helper.Can.Count == 0 ? "takes jobs that need no skill" : $"can: {string.Join(", ", helper.Can.Order(StringComparer.Ordinal))}";

    public static string Of(Ingredient ingredient)
    {
        var amount = ingredient.Quantity is { } quantity ? string.Create(CultureInfo.InvariantCulture, $"{quantity:0.###} {ingredient.Unit}").Trim() + " " : "";
        return $"{amount}{ingredient.Name}{(ingredient.Preparation is { } how ? $", {how}" : "")}{string.Concat(ingredient.Alternatives.Select(one => $", or {one}"))}";
    }

    /// <summary>Of a clock time that there is not on that day.</summary>
    public static string Skipped(DateTime wall, TimeZoneInfo zone) =>
        string.Create(CultureInfo.InvariantCulture, $"The clocks go forward that night and skip {wall:HH:mm}; {LocalTime.MeantBy(wall, zone):HH:mm} may be meant.");

    public static string Many(int count, string one, string more) => count == 1 ? $"1 {one}" : $"{count} {more}";
}
