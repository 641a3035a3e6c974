using System.Collections.Immutable;
using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief;

/// <summary>A step that ended later than it was told to, for reasons of its own.</summary>
/// <param name="BeganLate">Minutes it could have begun earlier by.</param>
/// <param name="TookLonger">Minutes it took longer than told; negative = it was quicker.</param>
/// <param name="From">When it was late: its told start, or what it waited for, or its told end.</param>
/// <param name="Noticed">The first tap about it; null where nobody tapped before the run ended.</param>
/// <param name="TableMinutes">How much earlier the latest course would have been ready without it, all else as it was.</param>
/// <param name="Absorbed">Where the rest of it went, the most first.</param>
public sealed record Slip(StepId Step, int BeganLate, int TookLonger, DateTimeOffset From, Sign? Noticed, int TableMinutes, ImmutableArray<Absorbed> Absorbed)
{
    /// <summary>Less is no slip but the coarseness of taps. Common practice, no source.</summary>
    const double Least = 3;

    public int Minutes => BeganLate + TookLonger;

    internal static ImmutableArray<Slip> Of(RunStory story, Replay replay) =>
    [
        .. story.Meal.Steps.Where(step => replay.SlipOf(step.Id) >= Least)
            .Select(step => Of(story, replay, step.Id))
            .OrderByDescending(slip => slip.TableMinutes).ThenByDescending(slip => slip.Minutes).ThenBy(slip => slip.Step.Value, StringComparer.Ordinal),
    ];

    static Slip Of(RunStory story, Replay replay, StepId step)
    {
        var (lag, state, told) = (replay.LagOf(step), story.StateOf(step), story.ToldOf(step));
        var from = lag.BeganLate >= 1 ? state.Started!.Value.AddMinutes(-lag.BeganLate) : state.Started!.Value.AddMinutes(told.Minutes);
        var signs = story.SignsOf(step).Where(sign => sign.At >= from || sign.Kind == SignKind.TimeAdded).ToArray();
        var (cost, absorbed) = replay.Without(step);
        return new(step, (int)Math.Round(lag.BeganLate), (int)Math.Round(lag.TookLonger), from, signs.Length > 0 ? signs[0] : null, cost, absorbed);
    }
}

/// <summary>Spare minutes that took up part of a slip: those before a step, or before a course came to the table. Exactly one is set.</summary>
public sealed record Absorbed(StepId? Before, CourseId? Table, int Minutes);
