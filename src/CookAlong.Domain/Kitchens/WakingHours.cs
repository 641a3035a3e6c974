namespace CookAlong.Domain.Kitchens;

/// <summary>When the household is up, by its wall clock, in whole minutes; noon always lies inside.</summary>
/// <param name="Up">From midnight to noon.</param>
/// <param name="Bed">After noon, or after midnight and before <paramref name="Up"/>.</param>
public readonly record struct WakingHours(TimeOnly Up, TimeOnly Bed)
{
    /// <summary>Common practice, no source.</summary>
    public static WakingHours Usual { get; } = new(new(7, 0), new(22, 0));

    /// <summary>So that hours given the wrong way round, which would make a night of the day, are found out.</summary>
    public bool HoldNoon => Up <= Noon && (Bed > Noon || Bed < Up);

    /// <summary>The day on which they went to bed, counted from the one on which they get up: 0, or the day before it.</summary>
    public int BedDay => Bed < Up ? 0 : -1;

    static TimeOnly Noon => new(12, 0);
}
