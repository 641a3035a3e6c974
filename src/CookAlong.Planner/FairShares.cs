using CookAlong.Domain.Meals;

namespace CookAlong.Planner;

/// <summary>What a minute's work weighs for whom: more for those who are here for less of it, and double for a child.</summary>
internal static class FairShares
{
    /// <summary>A minute's work of a grown-up who is here for all of it.</summary>
    public const int Usual = 100;

    /// <summary>Whoever is here only for a few minutes is not spared all work in them.</summary>
    private const int Heaviest = 8 * Usual;

    /// <summary>Per helper, in the meal's order; in hundredths of <see cref="Usual"/> hands.</summary>
    /// <param name="jobs">When there is work, in minutes of the clock; only then does being here count.</param>
    public static long[] Of(Meal meal, Clock clock, IEnumerable<(int Start, int End)> jobs)
    {
        var work = Spans.Joined(jobs);
        var all = work.Sum(span => span.To - span.From);
        return
        [
            .. meal.Helpers.Select(helper =>
            {
                var here = work.Sum(span => helper.MinutesHere(clock.At(span.From), clock.At(span.To)));
                var weight = here == 0 ? Heaviest : Math.Min(Heaviest, (long)Usual * all / here);
                return helper.IsChild ? 2 * weight : weight;
            }),
        ];
    }
}
