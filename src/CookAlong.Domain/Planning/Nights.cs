using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>
/// The nights before the day of the meal, in which nobody works ahead: outside of the kitchen's waking hours. A household that
/// wants it otherwise once says so by a helper's own hours, by a step's fixed time, or by a first minute in the night.
/// </summary>
public static class Nights
{
    /// <summary>The day of the meal begins so long before its first table, where that is earlier than the usual hour; in minutes, own choice.</summary>
    const int LongestDay = 8 * 60;

    /// <summary>In order and apart; none after the first table.</summary>
    public static ImmutableArray<Window> Of(Meal meal)
    {
        var (table, awake) = (meal.FirstTableTime, meal.Kitchen.Awake);
        var first = meal.NotBefore ?? table - Meal.LongestLead;
        var nights = ImmutableArray.CreateBuilder<Window>();
        for (var day = LocalTime.Show(table, meal.TimeZone).Date; ; day = day.AddDays(-1))
        {
            var bed = At(day.AddDays(awake.BedDay) + awake.Bed.ToTimeSpan(), meal.TimeZone);
            var up = Minute.Earlier(At(day + awake.Up.ToTimeSpan(), meal.TimeZone), table - LongestDay);
            if (up <= first || (meal.NotBefore is { } given && bed <= given))
            {
                nights.Reverse();
                return [.. nights.SelectMany(night => Without(night, meal))];
            }

            if (bed < up)
            {
                nights.Add(new Window(bed, up));
            }
        }
    }

    /// <summary>The meal with the nights taken out of the hours of whoever is otherwise always there.</summary>
    public static Meal Observed(Meal meal)
    {
        var nights = Of(meal);
        if (nights.IsEmpty)
        {
            return meal;
        }

        // A year is beyond any plan.
        const int Long = 366 * 24 * 60;
        ImmutableArray<Window> up =
        [
            .. nights.Select(night => night.From).Append(meal.LastTableTime + Long)
                .Zip(nights.Select(night => night.To).Prepend(nights[0].From - Long), (to, from) => new Window(from, to))
                .Where(window => window.From < window.To),
        ];
        return meal with { Helpers = [.. meal.Helpers.Select(helper => helper.Available.IsEmpty ? helper with { Available = up } : helper)] };
    }

    /// <summary>While a step has its fixed time somebody is up.</summary>
    static IEnumerable<Window> Without(Window night, Meal meal)
    {
        var from = night.From;
        foreach (var (start, end) in meal.Steps.Where(step => step.At is not null)
            .Select(step => (Start: step.At!.Value, End: step.At.Value + step.Ways.Max(way => way.Way.Minutes.Likely))).OrderBy(one => one.Start))
        {
            if (start < night.To && from < end)
            {
                if (from < start)
                {
                    yield return new Window(from, start);
                }

                from = end;
            }
        }

        if (from < night.To)
        {
            yield return night with { From = from };
        }
    }

    static Minute At(DateTime local, TimeZoneInfo zone) => LocalTime.Resolve(local, zone) ?? LocalTime.Resolve(LocalTime.MeantBy(local, zone), zone)!.Value;
}
