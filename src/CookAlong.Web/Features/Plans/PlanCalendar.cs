using System.Collections.Immutable;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace CookAlong.Web.Features.Plans;

/// <summary>A plan as an iCalendar file (RFC 5545): an event for each step, tend and table time, each with its alarm.</summary>
/// <remarks>
/// Times are written in UTC: a plan is made of real minutes, so nothing is left for the reader to resolve in the hour that
/// happens twice. Events keep their UID from plan to plan, so that a calendar that takes the file in again moves them.
/// </remarks>
public static class PlanCalendar
{
    /// <summary>An oven has to be opened and a tray found: minutes of warning before what needs heat (common practice, no source).</summary>
    const int Warning = 5;

    /// <param name="name">Names the meal in every UID: the same for the same meal, whatever is changed in it.</param>
    /// <param name="person">Only this helper's jobs, and the table times; null = everything.</param>
    /// <param name="now">When the file is made; a later file's events replace an earlier one's.</param>
    public static string Write(Meal meal, Plan plan, string name, HelperId? person, DateTimeOffset now)
    {
        var calendar = new Ical.Net.Calendar { Method = "PUBLISH", ProductId = "-//CookAlong//Plan//EN" };
        calendar.AddProperty("X-WR-CALNAME", person is { } one ? $"{meal.Name}, {meal.Helpers.Single(helper => helper.Id == one).Name}" : meal.Name);

        bool IsWanted(params ImmutableArray<HelperId> helpers) => person is null || helpers.Contains(person.Value);
        void Add(CalendarEvent made, string uid)
        {
            made.Uid = $"{uid}@{name}.cookalong";
            made.DtStamp = Utc(now);
            made.Sequence = (int)Minute.Of(now).SinceEpoch;
            calendar.Events.Add(made);
        }

        foreach (var planned in plan.Steps.Where(planned => IsWanted(planned.Helpers)))
        {
            Add(OfStep(meal, planned), $"step.{planned.Step}");
        }

        foreach (var tend in plan.Tends.Where(tend => IsWanted(tend.Helper)))
        {
            var asked = meal.Step(tend.Step).Tends[tend.Tend];
            Add(Event(tend.At, tend.Minutes, asked.Text, $"{meal.DishOf(tend.Step).Name}: {meal.Step(tend.Step).Text}\n{Names(meal, [tend.Helper])}", Where(meal, plan.Step(tend.Step))),
                string.Create(CultureInfo.InvariantCulture, $"tend.{tend.Step}.{tend.Tend}.{tend.Turn}"));
        }

        foreach (var course in plan.Courses)
        {
            var late = course.LateMinutes > 0 ? $"{PlanHeadline.Minutes(course.LateMinutes)} later than promised." : null;
            Add(Event(course.TableTime, 0, $"{meal.Courses.Single(one => one.Id == course.Course).Name} on the table", late, null), $"table.{course.Course}");
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    static CalendarEvent OfStep(Meal meal, PlannedStep planned)
    {
        var step = meal.Step(planned.Step);
        string?[] parts = [meal.DishOf(step.Id).Name, step.How, UsualCautions.Of(step) is { } caution ? $"Take care. {caution}" : null, Names(meal, planned.Helpers)];
        var made = Event(planned.Start, planned.Minutes, step.Text, string.Join('\n', parts.OfType<string>()), Where(meal, planned));
        if (planned.Oven is not null || planned.Grill is not null)
        {
            made.Alarms.Add(Alarm(-Warning, $"In {Warning} minutes: {step.Text}"));
        }

        return made;
    }

    static CalendarEvent Event(Minute at, int minutes, string summary, string? description, string? location)
    {
        var made = new CalendarEvent { Summary = summary, Description = description, Location = location, Start = Utc(at.Utc) };
        if (minutes > 0)
        {
            made.Duration = Duration.FromMinutes(minutes);
        }

        made.Alarms.Add(Alarm(0, summary));
        return made;
    }

    internal static Alarm Alarm(int minutes, string words) => new() { Action = AlarmAction.Display, Trigger = new Trigger(Duration.FromMinutes(minutes)), Description = words };

    internal static CalDateTime Utc(DateTimeOffset at) => new(at.UtcDateTime, CalDateTime.UtcTzId);

    static string? Where(Meal meal, PlannedStep planned) => PlaceNames.Of(meal, planned);

    static string? Names(Meal meal, ImmutableArray<HelperId> helpers) =>
        helpers.IsEmpty ? null : string.Join(" and ", helpers.Select(id => meal.Helpers.Single(helper => helper.Id == id).Name));
}
