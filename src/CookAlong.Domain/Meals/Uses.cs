using System.Collections.Immutable;

namespace CookAlong.Domain.Meals;

/// <summary>What a step occupies from start to end.</summary>
/// <param name="Rings">Number of rings, 0 = none.</param>
public sealed record Uses(OvenUse? Oven, int Rings, GrillUse? Grill, ImmutableArray<ApplianceId> Appliances)
{
    public static Uses Nothing { get; } = new(null, 0, null, []);

    /// <summary>In an oven, on a ring or under a grill: it is hot while it lasts, and comes out at its end.</summary>
    public bool IsOnTheHeat => Oven is not null || Rings > 0 || Grill is not null;
}

/// <param name="Oven">The oven asked for; null = any.</param>
/// <param name="Shelves">Shelves taken, 1 or more.</param>
public sealed record OvenUse(OvenId? Oven, int Shelves, CelsiusRange Celsius);

/// <param name="Grill">The grill asked for; null = any.</param>
public sealed record GrillUse(GrillId? Grill);
