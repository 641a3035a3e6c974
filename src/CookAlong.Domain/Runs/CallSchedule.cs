using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>Every call of a run that still matters, with its time.</summary>
public static class CallSchedule
{
    /// <summary>How far a running step may be past its end before it calls.</summary>
    const int OverAfter = 3;

    const int TableNotice = 10;

    /// <summary>In order of their time. A call whose matter is settled (the step begun, finished, ...) is not among them.</summary>
    public static ImmutableArray<Call> Of(Run run, DateTimeOffset now) => Of(run, now, new Expectation(run, now));

    internal static ImmutableArray<Call> Of(Run run, DateTimeOffset now, Expectation expected) =>
        run.Ended is not null
            ? []
            :
            [
                .. run.Meal.Steps.Where(step => run.StateOf(step.Id).Finished is null).SelectMany(step => OfStep(run, expected, step))
                    .Concat(run.Plan.Ovens.SelectMany(oven => OfOven(run, now, expected, oven)))
                    .Concat(run.Resting(expected, now).Where(one => one.HotUntil is not null).Select(one => OfRest(run, one)))
                    .Concat(OfKitchen(run, now, expected))
                    .Select(call => call with { IsAcknowledged = run.Acknowledged.ContainsKey(call.Id) })
                    .OrderBy(call => call.Due).ThenByDescending(call => call.Priority).ThenBy(call => call.Id.Value, StringComparer.Ordinal),
            ];

    /// <summary>
    /// A call that has come keeps the time it came at, for as long as it is due: what waits for somebody who has not begun
    /// is expected "now" every minute anew, and such a call would never grow old.
    /// </summary>
    /// <param name="before">The schedule a moment ago.</param>
    public static ImmutableArray<Call> Since(this ImmutableArray<Call> calls, ImmutableArray<Call> before, DateTimeOffset now)
    {
        var came = before.Where(call => call.Due <= now).DistinctBy(call => call.Id).ToDictionary(call => call.Id, call => call.Due);
        return [.. calls.Select(call => call.Due <= now && came.TryGetValue(call.Id, out var due) && due < call.Due ? call with { Due = due } : call)];
    }

    /// <summary>The call is about something in this run, though it does not ring any more.</summary>
    public static bool IsSettled(Run run, CallId call) =>
        run.Menu.SelectMany(dish => dish.Steps).Any(step => CallIds.IsAbout(call, step.Id))
        || run.Meal.Courses.Any(course => CallIds.Table(course.Id) == call)
        || run.Plan.Ovens.Any(oven => call.Value.StartsWith($"dial:{oven.Oven}:", StringComparison.Ordinal))
        || Enumerable.Range(1, checked((int)run.Sequence)).Any(sequence => CallIds.Pause(sequence) == call);

    static IEnumerable<Call> OfStep(Run run, Expectation expected, Step step)
    {
        var way = run.WayOf(step);
        var state = run.StateOf(step.Id);
        var hasHeat = way.Uses.IsOnTheHeat;
        var oven = run.Plan.Step(step.Id).Oven;
        if (hasHeat)
        {
            yield return About(step, CallIds.Out(step.Id, state), CallKind.Out, hasHeat, expected.Ends(step.Id), oven);
        }

        if (state.Started is not null)
        {
            var over = expected.Ends(step.Id).AddMinutes(OverAfter);
            yield return About(step, CallIds.Over(step.Id, state), CallKind.Over, hasHeat, over, oven);
        }
        else if (hasHeat)
        {
            yield return About(step, CallIds.In(step.Id, state), CallKind.In, hasHeat, expected.CalledAt(step), oven);
        }
        else if (way.Attention == Attention.HandsOn)
        {
            yield return About(step, CallIds.Begin(step.Id, state), CallKind.Begin, hasHeat, expected.CalledAt(step), oven);
        }

        foreach (var turn in Tending.Left(run, step))
        {
            var tend = step.Tends[turn.Turn.Tend];
            yield return About(step, CallIds.Tend(turn.Turn, state), CallKind.Tend, hasHeat, expected.Starts(step.Id).AddMinutes(turn.Minutes), oven) with { Tend = tend };
        }
    }

    static IEnumerable<Call> OfOven(Run run, DateTimeOffset now, Expectation expected, OvenProgramme oven)
    {
        var dial = OvenDial.Of(run, expected, oven);
        for (var i = 0; i < dial.Length; i++)
        {
            var isPast = (i + 1 < dial.Length && dial[i + 1].At.Utc <= now) || OvenDial.WasNeeded(run, oven, oven.Dial[i]);
            if (!isPast)
            {
                yield return new Call(
                    CallIds.Dial(oven.Oven, oven.Dial[i].At), dial[i].At.Utc, CallKind.Dial, Hazards.PriorityOf(CallKind.Dial, isOnHeat: true), null, null, dial[i], oven.Oven, null, false);
            }
        }
    }

    static IEnumerable<Call> OfKitchen(Run run, DateTimeOffset now, Expectation expected)
    {
        if (run.Pause is { } pause)
        {
            yield return new Call(
                CallIds.Pause(pause.Sequence), pause.Since, CallKind.Pause, Hazards.PriorityOf(CallKind.Pause, isOnHeat: false), pause.After, null, null, null, null, false);
        }

        foreach (var course in run.Meal.Courses)
        {
            var table = expected.Retimed.TableTimes[course.Id];
            if (table.Utc > now)
            {
                yield return new Call(
                    CallIds.Table(course.Id), (table - TableNotice).Utc, CallKind.Table, Hazards.PriorityOf(CallKind.Table, isOnHeat: false), null, null, null, null, course.Id, false);
            }
        }
    }

    static Call OfRest(Run run, BoardResting rest)
    {
        var notice = rest.HotUntil!.Value.AddMinutes(-Run.RestNotice);
        return About(run.Meal.Step(rest.Step), CallIds.Cools(rest.Step, run.StateOf(rest.Step)), CallKind.Cools, isOnHeat: false, notice < rest.Out ? rest.Out : notice, null);
    }

    static Call About(Step step, CallId id, CallKind kind, bool isOnHeat, DateTimeOffset due, OvenId? oven) =>
        new(id, due, kind, Hazards.PriorityOf(kind, isOnHeat), step.Id, null, null, oven, null, false);
}
