using System.Collections.Immutable;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Doneness;

/// <summary>A joint in its oven: what is known of the air around it.</summary>
/// <param name="In">When it went in.</param>
/// <param name="Air">
/// The oven's temperature in °C on the conventional scale, straight from point to point, as the last one leaves it; in order of time,
/// one point at the least. A fan oven at its own lower setting brings as much heat, so the scale stands for both.
/// </param>
/// <param name="Doors">Turning and basting count: the joint is heated evenly here, what turning costs is the open door.</param>
/// <param name="Foil">Spans under foil.</param>
public sealed record Roasting(
    Joint Joint,
    DateTimeOffset In,
    ImmutableArray<AirPoint> Air,
    ImmutableArray<DoorOpening> Doors,
    ImmutableArray<FoilSpan> Foil,
    double RoomCelsius = Roasting.UsualRoom)
{
    /// <summary>°C in a kitchen that is cooked in; common practice, no source.</summary>
    public const int UsualRoom = 22;

    /// <summary>In an oven that stays at one temperature.</summary>
    public static Roasting At(Joint joint, DateTimeOffset @in, double celsius) => new(joint, @in, [new(@in, celsius)], [], []);

    /// <summary>By the kitchen's own programme.</summary>
    /// <param name="startsAt">°C of the oven before the programme's first point.</param>
    public static Roasting By(Joint joint, DateTimeOffset @in, OvenProgramme programme, int startsAt) =>
        new(joint, @in, programme.Points.IsEmpty ? [new(@in, startsAt)] : [.. programme.Points.Select(point => new AirPoint(point.At.Utc, point.Celsius))], [], []);

    /// <summary>The oven stays from then on as it is at that moment.</summary>
    public Roasting AsLeftAt(DateTimeOffset moment) =>
        this with { Air = [.. Air.Where(point => point.At < moment), new(moment, AirAt(moment))] };

    /// <summary>All the oven does, as much later.</summary>
    public Roasting Later(TimeSpan by) => this with { Air = [.. Air.Select(point => point with { At = point.At + by })] };

    /// <summary>°C of the air by the programme alone, with all doors shut.</summary>
    public double AirAt(DateTimeOffset moment)
    {
        if (moment <= Air[0].At)
        {
            return Air[0].Celsius;
        }

        for (var next = 1; next < Air.Length; next++)
        {
            if (moment < Air[next].At)
            {
                var (from, to) = (Air[next - 1], Air[next]);
                return from.Celsius + ((to.Celsius - from.Celsius) * ((moment - from.At) / (to.At - from.At)));
            }
        }

        return Air[^1].Celsius;
    }
}

/// <summary>°C of the oven at a moment.</summary>
public readonly record struct AirPoint(DateTimeOffset At, double Celsius);

/// <param name="Lasting">How long the door stood open; a look is about half a minute, basting or turning about two.</param>
public readonly record struct DoorOpening(DateTimeOffset At, TimeSpan Lasting);

/// <param name="To">Null = it stays on.</param>
public readonly record struct FoilSpan(DateTimeOffset From, DateTimeOffset? To);
