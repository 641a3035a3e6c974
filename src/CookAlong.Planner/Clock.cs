using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>The span one attempt plans in. The solver counts minutes from <see cref="Origin"/>.</summary>
/// <param name="Origin">Where the plan's clock begins: <see cref="Domain.Planning.Plan.NotBefore"/>.</param>
/// <param name="Earliest">Nothing that has not begun starts before this minute of the clock; 0 or more.</param>
/// <param name="MostLate">How late a course may be served in this attempt, in minutes; 0 = on time only.</param>
internal sealed record Clock(Minute Origin, int Earliest, int MostLate)
{
    /// <summary>How late a course may be served before there is said to be no plan, in minutes.</summary>
    public const int MostLateMinutes = 360;

    /// <summary>Where the meal leaves its first minute to the planner: this long before the first table time, in turn, until a plan on time exists.</summary>
    private static readonly int[] Beginnings = [180, 360, 720, 1440, 4320];

    // Somebody's "always" may lie in the year 9999: what is far outside any meal is cut to a number that cannot overflow.
    private const int Far = 500_000_000;

    public int Of(Minute at) => (int)Math.Clamp(at.SinceEpoch - Origin.SinceEpoch, -Far, Far);

    public Minute At(long minutes) => Origin + checked((int)minutes);

    /// <summary>The last minute anything of the meal may happen at.</summary>
    public int End(Meal meal) => Math.Max(Of(meal.LastTableTime), Earliest) + MostLate;

    /// <summary>While a meal runs: the plan's own clock, from now on.</summary>
    public static Clock Of(SoFar so, Minute? now) =>
        new(so.Current.NotBefore, Math.Max(0, (now ?? so.Current.NotBefore) - so.Current.NotBefore), MostLateMinutes);

    /// <summary>First minutes to try, none before <paramref name="now"/>.</summary>
    public static IEnumerable<Minute> Origins(Meal meal, Minute? now)
    {
        var earliest = now ?? new Minute(long.MinValue);
        return meal.NotBefore is { } given
            ? [Minute.Later(given, earliest)]
            : Beginnings.Select(minutes => Minute.Later(meal.FirstTableTime - minutes, earliest)).Distinct();
    }
}
