namespace CookAlong.Domain.Meals;

/// <summary>One way a finished dish may wait for the table. All figures are minutes, 0 or more.</summary>
/// <param name="Least">A rest the food needs.</param>
/// <param name="BestWithin">Waiting is free up to here.</param>
/// <param name="GoodFor">From <paramref name="BestWithin"/> to here each minute costs <paramref name="CostPerMinute"/>, beyond it double.</param>
/// <param name="Limit">Never longer.</param>
/// <param name="Oven">Set exactly when <paramref name="Place"/> is <see cref="HoldPlace.WarmOven"/>.</param>
public sealed record Hold(HoldPlace Place, int Least, int BestWithin, int GoodFor, int Limit, int CostPerMinute, WarmOven? Oven)
{
    /// <summary>What a dish gets when its file names no hold.</summary>
    public static Hold OnTheTable { get; } = new(HoldPlace.Table, Least: 0, BestWithin: 5, GoodFor: 10, Limit: 15, CostPerMinute: 1, Oven: null);

    /// <summary>The price of waiting <paramref name="minutes"/>, whatever the limit says.</summary>
    public long CostOf(int minutes) =>
        (long)CostPerMinute * (Math.Max(0, Math.Min(minutes, GoodFor) - BestWithin) + (2L * Math.Max(0, minutes - GoodFor)));
}

public enum HoldPlace { Table, Side, Covered, WarmOven, Fridge }

/// <param name="StandFirst">How long the dish may stand out before it goes in, while the oven cools; the whole wait counts.</param>
public sealed record WarmOven(CelsiusRange Celsius, int Shelves, int StandFirst);
