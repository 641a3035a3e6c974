using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>One line of the timetable.</summary>
/// <param name="Minutes">Null for a moment (a turn of the dial, a table time).</param>
/// <param name="Helpers">Whose job it is; empty where nobody's hands are needed or it is anybody's.</param>
public sealed record TimetableLine(TimetableKind Kind, Minute At, string Words, int? Minutes, ImmutableArray<HelperId> Helpers, StepId? Step, string? Caution = null);

public enum TimetableKind { Step, Tend, Dial, KeepWarm, Pause, WashUp, Table }

/// <summary>The plan in words, in order of time.</summary>
public static class TimetableLines
{
    public static ImmutableArray<TimetableLine> Of(Meal meal, Plan plan)
    {
        var steps = meal.Steps.ToDictionary(step => step.Id);
        IEnumerable<TimetableLine> lines =
        [
            .. plan.Steps.Select(planned => new TimetableLine(
                TimetableKind.Step, planned.Start, steps[planned.Step].Text, planned.Minutes, planned.Helpers, planned.Step, UsualCautions.Of(steps[planned.Step]))),
            .. plan.Tends.Select(tend => new TimetableLine(
                TimetableKind.Tend, tend.At, $"{steps[tend.Step].Tends[tend.Tend].Text} ({meal.DishOf(tend.Step).Name})", tend.Minutes, [tend.Helper], tend.Step)),
            .. plan.Ovens.SelectMany(oven => oven.Dial.Select((dial, turn) => new TimetableLine(
                TimetableKind.Dial, dial.At, DialWords(meal, oven.Oven, dial.Celsius, turn == 0 ? 0 : oven.Dial[turn - 1].Celsius), null, [], null))),
            .. plan.Holds.Where(hold => hold.Place == HoldPlace.WarmOven).Select(hold => KeepWarm(meal, hold)),
            .. plan.Steps.Where(planned => steps[planned.Step].PauseAfter).Select(planned => new TimetableLine(
                TimetableKind.Pause, planned.End, "Pause here until everyone is ready", null, [], planned.Step)),
            .. plan.Cost.Leans.HasFlag(Leans.WashUp)
                ? WashingUp.Of(meal, plan).Select(free => new TimetableLine(TimetableKind.WashUp, free.From, "Wash up", free.Minutes, [free.Helper], null))
                : [],
            .. plan.Courses.Select(course => new TimetableLine(
                TimetableKind.Table, course.TableTime, $"{meal.Courses.Single(one => one.Id == course.Course).Name} on the table", null, [], null)),
        ];
        return [.. lines.OrderBy(line => line.At).ThenBy(line => line.Kind == TimetableKind.Table).ThenBy(line => line.Kind).ThenBy(line => line.Words, StringComparer.Ordinal)];
    }

    /// <summary>What concerns one helper: their own jobs, and what everybody must know.</summary>
    public static IEnumerable<TimetableLine> For(HelperId helper, IEnumerable<TimetableLine> lines) =>
        lines.Where(line => line.Helpers.Contains(helper) || line.Kind is TimetableKind.Pause or TimetableKind.Table);

    /// <param name="before">Where the dial stood, °C; 0 = off.</param>
    static string DialWords(Meal meal, OvenId oven, int celsius, int before)
    {
        var one = meal.Kitchen.Ovens.Single(one => one.Id == oven);
        var name = PlaceNames.The(one);
        var heat = $"{celsius} °C{PlaceNames.OnDial(one, celsius)}";
        return celsius == 0 ? $"Turn {name} off"
            : before == 0 ? $"Set {name} to {heat}"
            : $"Turn {name} {(celsius > before ? "up" : "down")} to {heat}";
    }

    static TimetableLine KeepWarm(Meal meal, PlannedHold hold)
    {
        var dish = meal.Dishes.Single(one => one.Id == hold.Dish);
        return new(TimetableKind.KeepWarm, hold.From, $"{dish.Name} into the oven to keep warm", hold.To - hold.From, [], dish.Steps[^1].Id);
    }
}
