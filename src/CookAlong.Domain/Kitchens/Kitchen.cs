using System.Collections.Immutable;

namespace CookAlong.Domain.Kitchens;

/// <param name="Rings">Number of rings, 0 or more.</param>
public sealed record Kitchen(ImmutableArray<Oven> Ovens, int Rings, ImmutableArray<Grill> Grills, ImmutableArray<Appliance> Appliances)
{
    /// <summary>Outside of them nobody works ahead who is otherwise always there.</summary>
    public WakingHours Awake { get; init; } = WakingHours.Usual;
}

/// <summary>An oven cavity. Temperatures are °C on the conventional scale.</summary>
/// <param name="Min">Lowest temperature it keeps with something inside.</param>
/// <param name="HeatUpPerMinute">Measured, °C a minute, above 0.</param>
/// <param name="CoolDownPerMinute">Measured, °C a minute, above 0.</param>
/// <param name="StartsAt">Its temperature when the meal's work may begin.</param>
public sealed record Oven(
    OvenId Id,
    string Name,
    int Shelves,
    bool Fan,
    int Min,
    int Max,
    decimal HeatUpPerMinute,
    decimal CoolDownPerMinute,
    int StartsAt)
{
    /// <summary>°C that its dial shows above a thermometer inside; negative when it is hotter than it says. Measured; 0 = it is right.</summary>
    public int ReadsHighBy { get; init; }

    /// <summary>Whole minutes at the least from <paramref name="from"/> to <paramref name="to"/> °C.</summary>
    public int MinutesBetween(int from, int to) =>
        (int)Math.Ceiling(to >= from ? (to - from) / HeatUpPerMinute : (from - to) / CoolDownPerMinute);

    /// <summary>Whole minutes at the least from somewhere in one range to somewhere in the other; 0 where they meet.</summary>
    public int MinutesBetween(CelsiusRange from, CelsiusRange to) =>
        from.Meets(to) ? 0
        : to.Min > from.Max ? MinutesBetween(from.Max, to.Min)
        : MinutesBetween(from.Min, to.Max);
}

/// <param name="InsideOven">The oven whose cavity it shares; then the grill and that oven exclude each other.</param>
public sealed record Grill(GrillId Id, OvenId? InsideOven);

public sealed record Appliance(ApplianceId Id, int Count);
