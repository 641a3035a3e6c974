using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Debrief.Learning;

/// <summary>What a household plans a step with in place of what is written; times the likely written minutes, so that it follows a dish that is scaled.</summary>
public sealed record AcceptedTime(StepKey Step, double Least, double Likely, double Most)
{
    public static AcceptedTime Of(LearnedTime learned) =>
        new(learned.Step, learned.Minutes.Least / learned.Written.Likely, learned.Factor, learned.Minutes.Most / learned.Written.Likely);

    /// <summary>Whole minutes, 1 or more.</summary>
    public Durations Of(Durations written)
    {
        int Whole(double factor) => Math.Max(1, (int)Math.Round(factor * written.Likely, MidpointRounding.AwayFromZero));
        return new(Whole(Least), Whole(Likely), Whole(Most));
    }

    /// <summary>The meal with what was accepted, and what the recipe says for each way of a step that changed (-1 = as written, then its options).</summary>
    public static (Meal Meal, ImmutableDictionary<(StepId Step, int Option), WrittenTime> Written) Apply(Meal meal, Func<Dish, string> dishOf, IReadOnlyDictionary<StepKey, AcceptedTime> accepted)
    {
        var written = ImmutableDictionary.CreateBuilder<(StepId, int), WrittenTime>();
        Way Changed(StepId step, int option, Way way, AcceptedTime time)
        {
            // Only hands were timed, and only hands are learned.
            if (way.Attention != Attention.HandsOn || time.Of(way.Minutes) == way.Minutes)
            {
                return way;
            }

            written[(step, option)] = WrittenTime.Of(way.Minutes);
            return way with { Minutes = time.Of(way.Minutes) };
        }

        Step Learned(Dish dish, Step step) => accepted.GetValueOrDefault(StepKey.Of(dishOf(dish), step.Text)) is { } time
            ? step with { Way = Changed(step.Id, -1, step.Way, time), Options = [.. step.Options.Select((way, option) => Changed(step.Id, option, way, time))] }
            : step;

        var dishes = meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(step => Learned(dish, step))] });
        return accepted.Count == 0 ? (meal, []) : (meal with { Dishes = [.. dishes] }, written.ToImmutable());
    }
}
