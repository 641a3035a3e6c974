using CookAlong.Domain.Meals;

namespace CookAlong.Domain.FoodSafety;

/// <summary>When a dish was cooked, and when it was hot last; the same, but for a dish that was made ahead and warmed.</summary>
public sealed record HotTimes(DateTimeOffset Cooked, DateTimeOffset OffTheHeat)
{
    /// <summary>Farther apart, two times on the heat are cooking and warming up again; own estimate, no source.</summary>
    static readonly TimeSpan Apart = TimeSpan.FromHours(4);

    public bool WasReheated => Cooked < OffTheHeat;

    /// <param name="ended">When a step was done; null = nobody has said so.</param>
    /// <returns>Null when nothing of it is known. Of a dish that is never heated, when it was finished.</returns>
    public static HotTimes? Of(Dish dish, Func<StepId, DateTimeOffset?> ended)
    {
        var hot = dish.Steps.Where(IsOnTheHeat).ToList();
        var ends = (hot.Count > 0 ? hot : [.. dish.Steps]).Select(step => ended(step.Id)).OfType<DateTimeOffset>().Order().ToList();
        if (ends.Count == 0)
        {
            return null;
        }

        var cooked = ends[0];
        foreach (var end in ends.TakeWhile(end => end - cooked <= Apart))
        {
            cooked = end;
        }

        return new(cooked, ends[^1]);
    }

    static bool IsOnTheHeat(Step step) => step.Options.Prepend(step.Way).Any(way => way.Uses.IsOnTheHeat);
}
