using System.Text;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Plans;
using Ical.Net.CalendarComponents;

namespace CookAlong.Web.Tests.Plans;

/// <summary>The plan as a calendar: read back by a parser, and held against RFC 5545 by hand.</summary>
public sealed class PlanCalendarTests
{
    static readonly DateTimeOffset Now = new(2026, 12, 17, 20, 15, 0, TimeSpan.Zero);

    static string Text(Meal? meal = null, Plan? plan = null, string? person = null, DateTimeOffset? now = null) =>
        PlanCalendar.Write(meal ?? AlderLane.Meal, plan ?? AlderLane.Plan, "a-meal", person is null ? null : new HelperId(person), now ?? Now);

    static Dictionary<string, CalendarEvent> Read(string text) => Ical.Net.Calendar.Load(text)!.Events.ToDictionary(one => one.Uid!.Split('@')[0]);

    [Fact]
    public void Every_step_every_tend_and_every_table_time_is_an_event()
    {
        var events = Read(Text());

        Assert.Equal(
            AlderLane.Plan.Steps.Select(step => $"step.{step.Step}")
                .Concat(AlderLane.Plan.Tends.Select(tend => $"tend.{tend.Step}.{tend.Tend}.{tend.Turn}"))
                .Concat(AlderLane.Plan.Courses.Select(course => $"table.{course.Course}")).Order(StringComparer.Ordinal),
            events.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_step_has_its_time_its_words_its_caution_and_its_place()
    {
        var events = Read(Text());
        var (rough, roast) = (events["step.potatoes-rough"], events["step.goose-roast"]);

        Assert.Equal(AlderLane.At("12:25").Utc, rough.Start!.AsUtc);
        Assert.Equal(TimeSpan.FromMinutes(5), rough.EffectiveDuration.ToTimeSpanUnspecified());
        Assert.Equal("Rough up the boiled potatoes", rough.Summary);
        Assert.Equal("Roast potatoes\nTake care. Hot fat: dry hands, long cloth.\nMaren", rough.Description);
        Assert.Null(rough.Location);
        Assert.Equal("Oven, 1 shelf, 170–190 °C", roast.Location);
        Assert.Equal(120, roast.EffectiveDuration.ToTimeSpanUnspecified().TotalMinutes);
    }

    [Fact]
    public void Work_of_the_day_before_is_there_on_its_day()
    {
        Assert.Equal(AlderLane.At("17:20", dayBefore: true).Utc, Read(Text())["step.cabbage-braise"].Start!.AsUtc);
    }

    [Theory]
    [InlineData("step.goose-carve", new[] { 0 })]
    [InlineData("step.goose-roast", new[] { 0, -5 })]
    [InlineData("step.pears-grill", new[] { 0, -5 })]
    [InlineData("tend.goose-roast.0.0", new[] { 0 })]
    [InlineData("table.main", new[] { 0 })]
    public void It_rings_at_the_start_and_five_minutes_earlier_where_heat_is_needed(string uid, int[] minutes)
    {
        var alarms = Read(Text())[uid].Alarms;

        Assert.Equal(minutes, alarms.Select(alarm => (int)alarm.Trigger!.Duration!.Value.ToTimeSpanUnspecified().TotalMinutes));
        // RFC 5545 section 3.6.6: a display alarm has an action, a trigger and a description.
        Assert.All(alarms, alarm => Assert.Equal("DISPLAY", alarm.Action));
        Assert.All(alarms, alarm => Assert.False(string.IsNullOrEmpty(alarm.Description)));
    }

    [Fact]
    public void One_person_s_calendar_has_their_jobs_and_the_table_times()
    {
        Assert.Equal(["step.dumplings-roll", "step.pears-halve", "table.main", "table.pudding"], Read(Text(person: "tobi")).Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Taken_in_again_the_same_events_are_moved()
    {
        var moved = AlderLane.Plan with { Steps = [.. AlderLane.Plan.Steps.Select(step => step with { Start = step.Start + 10, End = step.End + 10 })] };

        var (first, second) = (Read(Text()), Read(Text(plan: moved, now: Now.AddHours(1))));

        Assert.Equal(first.Keys.Order(), second.Keys.Order());
        // RFC 5545 section 3.8.7.4: a revision has a greater sequence number; 3.8.7.2: DTSTAMP is when this copy was made.
        Assert.All(first, one => Assert.True(second[one.Key].Sequence > one.Value.Sequence));
        Assert.All(second.Values, one => Assert.Equal(Now.AddHours(1).UtcDateTime, one.DtStamp!.AsUtc));
        Assert.Equal(10, (second["step.goose-roast"].Start!.AsUtc - first["step.goose-roast"].Start!.AsUtc).TotalMinutes);
    }

    [Fact]
    public void In_the_hour_that_happens_twice_each_pass_has_its_own_minute()
    {
        // In Oslo the clocks go back on 25 October 2026 at 03:00, which is 01:00 UTC: 02:30 is 00:30Z and then 01:30Z.
        var first = Minute.Of(new DateTimeOffset(2026, 10, 25, 0, 30, 0, TimeSpan.Zero));
        var plan = AlderLane.Plan with { Steps = [.. AlderLane.Plan.Steps.Select((step, i) => i < 2 ? step with { Start = first + (60 * i), End = first + (60 * i) + 20 } : step)] };

        var lines = Unfolded(Text(plan: plan));

        // RFC 5545 section 3.3.5, form 2: the letter Z marks UTC.
        Assert.Contains("DTSTART:20261025T003000Z", lines);
        Assert.Contains("DTSTART:20261025T013000Z", lines);
        Assert.DoesNotContain(lines, line => line.Contains("TZID", StringComparison.Ordinal));
    }

    [Fact]
    public void Lines_end_and_fold_as_the_standard_says()
    {
        var how = string.Concat(Enumerable.Repeat("Grønne bønner, 60 g smør; så løk – æøå. ", 12));
        var text = Text(With(step => step with { How = how }));

        // RFC 5545 section 3.1: lines are delimited by CRLF and should not be longer than 75 octets, the break not counted.
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        Assert.DoesNotContain('\r', text.Replace("\r\n", "", StringComparison.Ordinal));
        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.All(text.Split("\r\n"), line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75));
        Assert.Contains(how.TrimEnd(), Read(text)["step.goose-ready"].Description!, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_is_escaped_as_the_standard_says()
    {
        var lines = Unfolded(Text(With(step => step with { Text = @"Salt; pepper, and a back\slash", How = "one\ntwo" })));

        // RFC 5545 section 3.3.11: backslash, semicolon and comma are escaped, a line break is \n.
        Assert.Contains(@"SUMMARY:Salt\; pepper\, and a back\\slash", lines);
        Assert.Contains(lines, line => line.StartsWith(@"DESCRIPTION:Roast goose\none\ntwo\n", StringComparison.Ordinal));
    }

    [Fact]
    public void What_a_calendar_must_have_is_there_once()
    {
        var lines = Unfolded(Text());

        // RFC 5545 section 3.6: a calendar has PRODID and VERSION; 3.6.1: an event has UID and DTSTAMP, and with a METHOD no need of more.
        Assert.Equal("BEGIN:VCALENDAR", lines[0]);
        Assert.Single(lines, "VERSION:2.0");
        Assert.Single(lines, line => line.StartsWith("PRODID:", StringComparison.Ordinal));
        var events = lines.Count(line => line == "BEGIN:VEVENT");
        Assert.Equal(events, lines.Where(line => line.StartsWith("UID:", StringComparison.Ordinal)).Distinct().Count());
        Assert.Equal(events, lines.Count(line => line.StartsWith("DTSTAMP:", StringComparison.Ordinal)));
    }

    static Meal With(Func<Step, Step> change) => AlderLane.Meal with
    {
        Dishes = [.. AlderLane.Meal.Dishes.Select((dish, i) => i == 0 ? dish with { Steps = [change(dish.Steps[0]), .. dish.Steps.Skip(1)] } : dish)],
    };

    // RFC 5545 section 3.1: a CRLF and one white space after it are taken away together.
    static string[] Unfolded(string text) => text.Replace("\r\n ", "", StringComparison.Ordinal).Replace("\r\n\t", "", StringComparison.Ordinal).Split("\r\n");
}
