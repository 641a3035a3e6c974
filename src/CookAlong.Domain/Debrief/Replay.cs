using System.Collections.Immutable;
using CookAlong.Domain.Planning.Order;

namespace CookAlong.Domain.Debrief;

/// <summary>
/// The first plan's order, gone through again with what really happened: each step begins at its planned time or when what it
/// waits for is over, later by its own delay, and takes as long as it took. With nothing taken away that is what happened;
/// with one step's slip taken away it is what would have happened without it.
/// </summary>
sealed class Replay
{
    readonly RunStory story;
    readonly OrderOfWork order;
    readonly Lag[] lags;

    public Replay(RunStory story)
    {
        this.story = story;
        order = OrderOfWork.Of(story.Meal, story.Plan);
        lags = new Lag[order.Entries.Length];
        var ends = new double[lags.Length];
        var starts = new double[lags.Length];
        for (var at = 0; at < lags.Length; at++)
        {
            var ready = Ready(at, starts, ends);
            lags[at] = LagOf(order.Entries[at], ready);
            (starts[at], ends[at]) = Times(order.Entries[at], lags[at], ready, lags[at].All);
        }

        Courses = [.. story.Plan.Courses.Select(course => CourseOf(course.Course, ends))];
        All = Sweep(null);
        ByNewPlans = (int)Math.Round(Math.Max(0, Late(ends) - Late(All.Ends)));
    }

    /// <summary>As they were.</summary>
    public ImmutableArray<CourseLine> Courses { get; }

    /// <summary>What new plans cost beside the slips they answered.</summary>
    public int ByNewPlans { get; }

    Swept All { get; }

    /// <summary>How much later the step ended than it was told to, of its own; minutes. Null where it was not done.</summary>
    public double? SlipOf(StepId step) => lags[At(step)] is { IsDone: true } lag ? lag.BeganLate + lag.TookLonger : null;

    public Lag LagOf(StepId step) => lags[At(step)];

    /// <summary>What the step's slip cost the latest table, and where the rest of it was absorbed.</summary>
    public (int Cost, ImmutableArray<Absorbed> Absorbed) Without(StepId step)
    {
        var (own, without) = (At(step), Sweep(step));
        var cost = (int)Math.Round(Math.Max(0, Late(All.Ends) - Late(without.Ends)));
        var absorbed = new List<Absorbed>();
        for (var at = 0; at < lags.Length; at++)
        {
            if (at == own || order.Entries[at].Kind is EntryKind.Tend or EntryKind.WarmHold)
            {
                continue;
            }

            var pushed = 0.0;
            foreach (var link in order.Into(at))
            {
                pushed = Math.Max(pushed, link.FromEnd ? All.Ends[link.From] - without.Ends[link.From] : All.Starts[link.From] - without.Starts[link.From]);
            }

            // A table is not laid before its time.
            var floor = order.Entries[at].Course is { } course ? course.Promised - order.Zero : double.MinValue;
            var kept = (int)Math.Round(pushed - Math.Max(0, Math.Max(floor, All.Starts[at]) - Math.Max(floor, without.Starts[at])));
            if (kept > 0)
            {
                absorbed.Add(new Absorbed(order.Entries[at].Step?.Step, order.Entries[at].Course?.Course, kept));
            }
        }

        return (cost, [.. absorbed.OrderByDescending(one => one.Minutes).Take(3)]);
    }

    int At(StepId step) => order.Entries.Index().Single(one => one.Item.Kind == EntryKind.Step && one.Item.Step!.Step == step).Index;

    Swept Sweep(StepId? without)
    {
        var swept = new Swept(new double[lags.Length], new double[lags.Length]);
        for (var at = 0; at < lags.Length; at++)
        {
            var (entry, lag) = (order.Entries[at], lags[at]);
            var isTakenAway = entry.Kind == EntryKind.Step && entry.Step!.Step == without;
            // A new plan answers what slipped; what it moved is not counted as anybody's delay.
            var delay = lag.All - lag.ByPlan - (isTakenAway ? lag.BeganLate : 0);
            (swept.Starts[at], swept.Ends[at]) = Times(entry, isTakenAway ? lag with { Length = lag.Length - lag.TookLonger } : lag, Ready(at, swept.Starts, swept.Ends), delay);
        }

        return swept;
    }

    double Ready(int at, double[] starts, double[] ends)
    {
        var ready = 0.0;
        foreach (var link in order.Into(at))
        {
            ready = Math.Max(ready, (link.FromEnd ? ends[link.From] : starts[link.From]) + link.Least);
        }

        return ready;
    }

    // What nobody tells of (a tend's minute, a dish going into a warm oven, a table being laid, work that was left) takes no time and waits for no clock.
    static (double Start, double End) Times(Entry entry, Lag lag, double ready, double delay)
    {
        var start = lag.IsDone ? Math.Max(entry.Start, ready) + delay : ready;
        return (start, start + lag.Length);
    }

    Lag LagOf(Entry entry, double ready)
    {
        if (entry.Kind != EntryKind.Step || !story.IsDone(entry.Step!.Step))
        {
            return default;
        }

        var state = story.StateOf(entry.Step.Step);
        var told = story.ToldOf(entry.Step.Step);
        var start = (state.Started!.Value - order.Zero.Utc).TotalMinutes;
        var length = Math.Max(0, (state.Finished!.Value - state.Started.Value).TotalMinutes);
        var all = start - Math.Max(entry.Start, ready);
        var beganLate = Math.Clamp(start - Math.Max(told.Start - order.Zero, ready), 0, Math.Max(0, all));
        return new(IsDone: true, all, beganLate, Math.Max(0, all) - beganLate, length, length - told.Minutes);
    }

    double Late(double[] ends) => order.Entries.Index().Where(one => one.Item.Course is not null).Max(one => Math.Max(0, ends[one.Index] - (one.Item.Course!.Promised - order.Zero)));

    CourseLine CourseOf(CourseId id, double[] ends)
    {
        var course = story.Meal.Courses.Single(one => one.Id == id);
        var at = order.Entries.Index().Single(one => one.Item.Course?.Course == id).Index;
        var cooked = story.Meal.Dishes.Where(dish => dish.Course == id && !story.Run.LeftOut.ContainsKey(dish.Id)).SelectMany(dish => dish.Steps).ToArray();
        var isReady = cooked.Length > 0 && cooked.All(step => story.IsDone(step.Id));
        return new(id, course.Name, course.TableTime, story.Moved.TryGetValue(id, out var moved) ? moved : null, isReady ? order.Zero + (int)Math.Floor(ends[at]) : null);
    }

    /// <summary>Minutes after the plan's first.</summary>
    sealed record Swept(double[] Starts, double[] Ends);
}

/// <summary>How a step went beside its plan, in minutes.</summary>
/// <param name="All">Began so much after its planned time and what it waited for; negative = before.</param>
/// <param name="BeganLate">Of that, what it was late by the plan that people had by then.</param>
/// <param name="ByPlan">Of that, what a new plan had moved it.</param>
/// <param name="TookLonger">Than told; negative = it was quicker.</param>
readonly record struct Lag(bool IsDone, double All, double BeganLate, double ByPlan, double Length, double TookLonger);
