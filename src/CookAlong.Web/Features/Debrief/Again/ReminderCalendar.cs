using CookAlong.Domain;
using CookAlong.Domain.Debrief;
using CookAlong.Domain.Meals;
using CookAlong.Web.Features.Plans;
using Ical.Net.CalendarComponents;
using Ical.Net.Serialization;

namespace CookAlong.Web.Features.Debrief.Again;

/// <summary>What is to be seen to days and weeks before a meal, as an iCalendar file (RFC 5545) with alarms.</summary>
public static class ReminderCalendar
{
    /// <summary>Minutes of warning before work that begins ahead of the day: the evening before it, or that morning.</summary>
    const int BeforeWork = 12 * 60;

    /// <param name="name">Names the meal in every UID.</param>
    /// <param name="now">When the file is made; a later file's events replace an earlier one's.</param>
    public static string Write(Meal meal, IEnumerable<Reminder> reminders, string name, DateTimeOffset now)
    {
        var calendar = new Ical.Net.Calendar { Method = "PUBLISH", ProductId = "-//CookAlong//Reminders//EN" };
        calendar.AddProperty("X-WR-CALNAME", $"{meal.Name}, weeks ahead");
        foreach (var (number, one) in reminders.Index())
        {
            var words = AgainWords.What(one);
            // An order that is late already is for the next hour, not for a day that has gone.
            var isLate = one.Order is not null && one.At.Utc < now;
            var made = new CalendarEvent
            {
                Uid = one.Step is { } step ? $"ahead.{step.Id}@{name}.cookalong" : $"order.{one.Dish.Id}.{number}@{name}.cookalong",
                DtStamp = PlanCalendar.Utc(now),
                Sequence = (int)Minute.Of(now).SinceEpoch,
                Summary = words,
                Description = $"{one.Dish.Name}, for {meal.Name}, {AgainWords.Before(one, meal)}.{(isLate ? " Late: ask today." : "")}",
                Start = PlanCalendar.Utc(isLate ? now.AddHours(1) : one.At.Utc),
            };
            made.Alarms.Add(PlanCalendar.Alarm(0, words));
            if (one.Step is not null)
            {
                made.Alarms.Add(PlanCalendar.Alarm(-BeforeWork, $"In 12 hours: {words}"));
            }

            calendar.Events.Add(made);
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }
}
