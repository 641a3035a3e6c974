using System.Collections.Immutable;

namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <param name="Minute">Since the dial was turned from off.</param>
/// <param name="Celsius">What a thermometer that stands in the oven shows.</param>
public readonly record struct OvenReading(double Minute, double Celsius);

/// <summary>An oven measured once: turned on cold, left alone until it is hot, its door opened, turned off. Not every part need be there.</summary>
/// <param name="Dial">°C it was turned to.</param>
/// <param name="Readings">In the order of their minutes.</param>
/// <param name="DoorShut">Minute at which the door was shut again; null = it was not opened.</param>
/// <param name="Off">Minute at which it was turned off; null = it was not.</param>
public sealed record OvenTrial(int Dial, ImmutableArray<OvenReading> Readings, double? DoorShut, double? Off);

/// <summary>Somebody said while cooking when an oven was hot.</summary>
/// <param name="Minutes">From the turn of the dial until then.</param>
public readonly record struct HotTap(double Minutes, int From, int To);

/// <summary>A thermometer in an oven that had settled, read while cooking.</summary>
/// <param name="Dial">°C the dial itself stood at.</param>
/// <param name="Celsius">What the thermometer showed.</param>
public readonly record struct DialReading(int Dial, double Celsius);

/// <summary>How far a dial is out by the readings of one joint that roasted in the oven.</summary>
/// <param name="ReadsHighBy">°C.</param>
/// <param name="Error">One standard deviation, °C.</param>
public readonly record struct JointReading(double ReadsHighBy, double Error);

/// <summary>What was learned of one oven; null = nothing was seen of it that could be believed.</summary>
/// <param name="HeatUpPerMinute">°C a minute, from cold to the dial.</param>
/// <param name="CoolDownPerMinute">°C a minute, turned off with the door shut.</param>
/// <param name="ReadsHighBy">°C the dial shows above a thermometer inside.</param>
/// <param name="RecoveryMinutes">From the shut door until it is as hot as before.</param>
public sealed record OvenLearned(OvenFigure? HeatUpPerMinute, OvenFigure? CoolDownPerMinute, OvenFigure? ReadsHighBy, OvenFigure? RecoveryMinutes, ImmutableArray<OvenDoubt> Doubts)
{
    /// <summary>How many joints the dial's figure was guessed from; 0 = it was seen on a thermometer.</summary>
    public int ByJoints { get; init; }

    /// <summary>Something of it can be planned with.</summary>
    public bool HasFigures => HeatUpPerMinute is not null || CoolDownPerMinute is not null || ReadsHighBy is not null;
}

/// <param name="Seen">How often it was measured, or told by taps.</param>
public readonly record struct OvenFigure(double Value, int Seen);

/// <summary>Why something that was measured teaches nothing.</summary>
public readonly record struct OvenDoubt(OvenPart Part, OvenWhy Why);

public enum OvenPart { Heating, Hot, Door, Cooling }

public enum OvenWhy
{
    /// <summary>Fewer readings than a line needs that one wrong reading does not turn.</summary>
    TooFew,

    /// <summary>The readings do not lie on one line, or on a level.</summary>
    Contradictory,

    /// <summary>What they say no kitchen oven does.</summary>
    Unlikely,
}
