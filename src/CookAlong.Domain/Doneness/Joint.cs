namespace CookAlong.Domain.Doneness;

/// <summary>Cuts with a published roasting time.</summary>
public enum Cut
{
    WholeTurkey,
    TurkeyBreast,
    WholeChicken,
    WholeDuck,
    WholeGoose,
    BeefRib,
    BeefRound,
    BeefFillet,
    LambLegOnTheBone,
    LambLegRolled,
    PorkLoin,
    PorkShoulder,
    PorkFillet,
    VealRib,
    VealLoin,
    RawHam,
    CookedHam,
}

/// <summary>What goes into the oven.</summary>
/// <param name="Kilograms">Oven-ready, with any stuffing; 0.1 to 25.</param>
/// <param name="StartCelsius">Measured in the middle as it goes in; null = straight from the fridge.</param>
public sealed record Joint(Cut Cut, double Kilograms, bool Stuffed = false, double? StartCelsius = null)
{
    public const double LeastKilograms = .1;

    public const double MostKilograms = 25;

    /// <summary>Below it there is ice in the joint: lean meat begins to freeze at -1 °C; common practice, no source.</summary>
    public const double FrozenBelow = -.5;

    /// <summary>How its layers grow from the middle out (<see cref="Heat.Body.Roundness"/>); own estimate by shape, no source.</summary>
    public double Roundness => Cut switch
    {
        Cut.BeefFillet or Cut.PorkFillet or Cut.PorkLoin or Cut.VealLoin => 1.05,
        Cut.BeefRib or Cut.VealRib or Cut.LambLegRolled or Cut.TurkeyBreast => 1.4,
        Cut.BeefRound or Cut.LambLegOnTheBone => 1.5,
        Cut.WholeTurkey or Cut.WholeChicken or Cut.WholeDuck or Cut.WholeGoose or Cut.PorkShoulder or Cut.RawHam or Cut.CookedHam => 1.7,
        _ => throw new System.Diagnostics.UnreachableException(Cut.ToString()),
    };
}

/// <summary>A core temperature somebody typed or a thermometer sent.</summary>
public readonly record struct ProbeReading(DateTimeOffset At, double Celsius);
