using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.FoodSafety;

/// <summary>How long a dish has been neither kept cold nor hot, all together, as far as its steps tell.</summary>
/// <param name="Known">While it was worked on, or lay between two steps.</param>
/// <param name="Unknown">Gaps of which nobody has said where it was.</param>
public sealed record StandingOut(TimeSpan Known, TimeSpan Unknown)
{
    /// <summary>Longer than this between two steps, it was put away somewhere; own estimate, no source.</summary>
    public static readonly TimeSpan PutAway = TimeSpan.FromHours(4);

    /// <summary>A span in which it is cold, on the heat, or worked on.</summary>
    public readonly record struct Span(DateTimeOffset From, DateTimeOffset To);

    /// <param name="seen">When a step began and ended; null = not yet.</param>
    /// <param name="kept">More spans in which it was hot or cold: a joint at rest, a warm oven.</param>
    /// <returns>Null where nothing in it spoils and nothing of it has been cooked.</returns>
    public static StandingOut? Of(Dish dish, Func<StepId, (DateTimeOffset? Began, DateTimeOffset? Ended)> seen, Func<Step, Way> wayOf, IEnumerable<Span> kept, DateTimeOffset until)
    {
        var steps = dish.Steps.Select(step => (Step: step, Way: wayOf(step), Seen: seen(step.Id)))
            .Where(one => one.Seen.Began < until)
            .Select(one => (one.Step, one.Way, Span: new Span(one.Seen.Began!.Value, one.Seen.Ended is { } end && end < until ? end : until)))
            .OrderBy(one => one.Span.From).ToList();
        var cooked = steps.Where(one => one.Way.Uses.IsOnTheHeat && one.Span.To < until).Select(one => (DateTimeOffset?)one.Span.To).Min();
        if ((dish.Ingredients.Any(Spoils) ? steps.Select(one => (DateTimeOffset?)one.Span.From).FirstOrDefault() : cooked) is not { } from)
        {
            return null;
        }

        var safe = steps.Where(one => one.Way.Uses.IsOnTheHeat).Select(one => one.Span)
            .Concat(steps.Where(one => IsCold(one.Step, one.Way)).Select(one => one.Span with { To = steps.Select(next => next.Span.From).Where(start => start > one.Span.From).DefaultIfEmpty(until).Min() }))
            .Concat(kept).ToList();
        var times = steps.Select(one => one.Span).Concat(safe).SelectMany(span => new[] { span.From, span.To }).Append(until).Where(at => from <= at && at <= until).Append(from).Distinct().Order().ToList();
        var (known, unknown, idle) = (TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero);
        foreach (var (start, end) in times.Zip(times.Skip(1)))
        {
            var isSafe = safe.Any(span => span.From <= start && end <= span.To);
            var isIdle = !isSafe && !steps.Any(one => one.Span.From <= start && end <= one.Span.To);
            if (isIdle)
            {
                idle += end - start;
                continue;
            }

            (known, unknown, idle) = (known + Near(idle) + (isSafe ? TimeSpan.Zero : end - start), unknown + Far(idle), TimeSpan.Zero);
        }

        return new(known + Near(idle), unknown + Far(idle));
    }

    static TimeSpan Near(TimeSpan idle) => idle <= PutAway ? idle : TimeSpan.Zero;

    static TimeSpan Far(TimeSpan idle) => idle <= PutAway ? TimeSpan.Zero : idle;

    /// <summary>It goes into the cold, or is in it; what is taken out of it is not.</summary>
    static bool IsCold(Step step, Way way) =>
        way.Uses.Appliances.Any(one => Names(one.Value)) || (Names(step.Text) && !step.Text.Contains("out of ", StringComparison.OrdinalIgnoreCase) && !step.Text.Contains("from the", StringComparison.OrdinalIgnoreCase));

    static bool Names(string words) => words.Contains("fridge", StringComparison.OrdinalIgnoreCase) || words.Contains("freezer", StringComparison.OrdinalIgnoreCase);

    static bool Spoils(Ingredient ingredient) =>
        FoodWords.Read(ingredient.Name).Certain.Overlaps([Trait.Meat, Trait.Fish, Trait.Crustaceans, Trait.Molluscs, Trait.Egg, Trait.Milk]);
}
