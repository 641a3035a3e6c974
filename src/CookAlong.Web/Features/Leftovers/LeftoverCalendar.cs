using CookAlong.Domain;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;
using Ical.Net.CalendarComponents;
using Ical.Net.Serialization;

namespace CookAlong.Web.Features.Leftovers;

/// <summary>Reminders of leftovers as an iCalendar file (RFC 5545): by when each is in the fridge, and by when it is eaten.</summary>
public static class LeftoverCalendar
{
    /// <summary>Minutes of warning before food has to be in the fridge; it has to be cut up and cooled first.</summary>
    const int BeforeFridge = 30;

    /// <summary>Minutes of warning before the last hour for eating it: a day to plan a meal of it.</summary>
    const int BeforeEating = 24 * 60;

    /// <param name="now">When the file is made; a later file's events replace an earlier one's.</param>
    public static string Write(KeptLeftovers kept, DateTimeOffset now)
    {
        var calendar = new Ical.Net.Calendar { Method = "PUBLISH", ProductId = "-//CookAlong//Leftovers//EN" };
        calendar.AddProperty("X-WR-CALNAME", $"{kept.Meal.Meal.Name}, leftovers");
        foreach (var left in kept.Left)
        {
            var what = $"{left.Dish.Name}, {MealWords.Many(left.Portions, "portion", "portions")}";
            if (left.Times.InFridge is { } fridge)
            {
                Add(calendar, kept, left, "fridge", fridge.By, $"Into the fridge: {what}", BeforeFridge, now);
            }

            if (left.Times.Eat is { } eat)
            {
                Add(calendar, kept, left, "eat", eat.By, $"Last hour to eat or freeze: {what}", BeforeEating, now);
            }
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    static void Add(Ical.Net.Calendar calendar, KeptLeftovers kept, DishLeft left, string which, DateTimeOffset at, string words, int before, DateTimeOffset now)
    {
        var made = new CalendarEvent
        {
            Uid = $"leftover.{which}.{left.Dish.Id}@{kept.Meal.Row.Id}.cookalong",
            DtStamp = PlanCalendar.Utc(now),
            Sequence = (int)Minute.Of(now).SinceEpoch,
            Summary = words,
            Description = LeftoverWords.Reheat,
            Start = PlanCalendar.Utc(at),
        };
        made.Alarms.Add(PlanCalendar.Alarm(-before, words));
        made.Alarms.Add(PlanCalendar.Alarm(0, words));
        calendar.Events.Add(made);
    }
}
