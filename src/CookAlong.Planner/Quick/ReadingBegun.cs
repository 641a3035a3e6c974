using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Encodings;

namespace CookAlong.Planner.Quick;

// What a running meal has fixed.
internal sealed partial class Reading
{
    /// <summary>Takes its place and its hands, and is not laid out any more.</summary>
    private QuickStep Begun(Dish dish, int dishIndex, Step step, StepFact fact)
    {
        var planned = told!.Step(step.Id)!;
        var way = step.WayOf(planned.Option);
        var span = (Start: clock.Of(fact.Start), End: fact.IsFinished ? clock.Of(fact.End) : Math.Max(clock.Of(fact.End), clock.Earliest));
        var oven = way.Uses.Oven is null ? -1 : meal.Kitchen.Ovens.ToList().FindIndex(one => one.Id == planned.Oven);
        var range = oven < 0 ? -1 : Range(oven, Places.Within(meal.Kitchen.Ovens[oven], way.Uses.Oven!.Celsius) ?? way.Uses.Oven.Celsius);
        var grill = way.Uses.Grill is null ? -1 : meal.Kitchen.Grills.ToList().FindIndex(one => one.Id == planned.Grill);
        var spot = Spot(oven, range, 0, planned.Oven, grill, way.Uses.Oven?.Shelves ?? 0, RingsAndAppliances(way.Uses) ?? [])
            ?? new QuickSpot(oven, range, 0, planned.Oven, planned.Grill, []);
        foreach (var take in spot.Takes)
        {
            Take(take.Row, span, take.Amount);
        }

        var isHandsOn = way.Attention == Attention.HandsOn;
        foreach (var helper in isHandsOn ? rows.Helpers(helper => planned.Helpers.Contains(helper.Id)) : [])
        {
            Take(helper, span, 1);
        }

        var quick = new QuickWay(planned.Option, span.End - span.Start, isHandsOn, way.People, [], [spot], [], -1);
        return new QuickStep(positions[step.Id], step, dishIndex, Course(dish), [quick], [], [], -Far, Far, null, IsLast: false) { Begun = span };
    }

    private void Take(int row, (int Start, int End) span, ushort amount)
    {
        var (from, to) = (Math.Clamp(span.Start, -margin, width - margin), Math.Clamp(span.End, -margin, width - margin));
        foreach (ref var cell in rows.Taken.AsSpan((row * width) + margin + from, to - from))
        {
            cell += amount;
        }
    }

    private Begun Begun(QuickStep[] steps, QuickDish[] dishes)
    {
        var begun = steps.Where(step => step.Begun is not null).ToArray();
        var tends = new BegunTends(clock, told!, moved!, rows, margin, width);
        foreach (var step in begun)
        {
            tends.Add(step.Step, step.Index, facts[step.Step.Id], step.Begun!.Value);
        }

        var stays = begun.Where(step => step.Ways[0].Spots[0].Oven >= 0)
            .Select(step => new QuickStay(step.Ways[0].Spots[0].Oven, step.Begun!.Value.Start, step.Begun.Value.End, step.Ways[0].Spots[0].Range));
        var made = dishes.Index().Where(dish => dish.Item.Steps.Length > 0 && IsMade(dish.Item.Dish)).Select(dish => new QuickMade(
            dish.Index,
            IsIn(dish.Item.Dish) is { } held ? (clock.Of(held.From), dish.Item.Holds[0].Spots.First(spot => spot.OvenId == held.Oven)) : null));
        return new Begun(begun, [.. stays], [.. tends.Jobs], [.. tends.Past], [.. made], tends.Sunk);
    }

    private bool IsMade(Dish dish) => dish.Steps.All(step => facts.ContainsKey(step.Id));

    /// <summary>How it is kept warm, where it went in before now.</summary>
    private PlannedHold? IsIn(Dish dish) =>
        so is not null && !dish.Steps.IsEmpty && IsMade(dish)
            && so.Current.Holds.FirstOrDefault(held => held.Dish == dish.Id) is { Place: HoldPlace.WarmOven } held && clock.Of(held.From) <= clock.Earliest
            ? held
            : null;

    /// <summary>Every step of it is finished, and before its table time, which is past, and has not been put off since.</summary>
    private int? Served(Course course)
    {
        if (so is null || so.Current.TableTime(course.Id) is var table && clock.Of(table) > clock.Earliest || course.TableTime > table)
        {
            return null;
        }

        var isDone = meal.Dishes.Where(dish => dish.Course == course.Id).SelectMany(dish => dish.Steps)
            .All(step => facts.TryGetValue(step.Id, out var fact) && fact.IsFinished && fact.End <= table);
        return isDone ? clock.Of(table) : null;
    }

    private int Floor(Step step) => step.After.Where(after => facts.ContainsKey(after.Step))
        .Select(after => EndOf(after.Step) + after.Least)
        .Append(clock.Earliest).Max();

    private int EndOf(StepId begun) =>
        facts[begun] is { IsFinished: true } fact ? clock.Of(fact.End) : Math.Max(clock.Of(facts[begun].End), clock.Earliest);

    private IEnumerable<int> Overdue(Step step)
    {
        foreach (var after in step.After.Where(after => after.Most is not null && facts.ContainsKey(after.Step)))
        {
            yield return EndOf(after.Step) + after.Most!.Value;
        }

        if (step.At is { } at)
        {
            yield return clock.Of(at);
        }

        if (step.Window is { } window)
        {
            yield return clock.Of(window.To) - step.Ways.Min(way => way.Way.Minutes.Likely);
        }
    }

    private QuickMoved Moved(Retimed moved, QuickStep[] steps, QuickDish[] dishes)
    {
        var end = clock.End(meal);
        var soonest = SoonestEnds(steps);
        int LateAtLeast(int course) => steps.Where(step => step.Course == course)
            .Select(step => soonest[step.Index] + dishes[step.Dish].Holds.Min(hold => hold.Hold.Least) - clock.Of(meal.Courses[course].TableTime)).Append(0).Max();
        return new QuickMoved(
            [.. steps.Select(step => Math.Min(end, clock.Of(moved.Steps[step.Step.Id].End)))],
            ToldWays(steps),
            ToldHolds(dishes),
            [.. meal.Courses.Select(course => Math.Max(0, Math.Min(end, clock.Of(moved.TableTimes[course.Id])) - clock.Of(course.TableTime)))],
            [.. meal.Courses.Select((course, index) => Served(course) is null ? LateAtLeast(index) : 0)]);
    }

    /// <summary>When each would end if nothing but its own recipe were in the way.</summary>
    private static int[] SoonestEnds(QuickStep[] steps)
    {
        var ends = new int?[steps.Length];
        int End(QuickStep step) => ends[step.Index] ??= step.Begun?.End
            ?? step.Ways.Min(way => way.Minutes) + step.Before.Select(gap => End(steps[gap.Step]) + gap.Least).Append(step.Floor).Max();
        return [.. steps.Select(End)];
    }
}
