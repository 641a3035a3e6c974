namespace CookAlong.Domain.Doneness;

/// <summary>A roasting cut into steps of equal length from the moment the joint goes in: the air, and how much of it reaches the surface.</summary>
sealed class OvenAir
{
    /// <summary>How far towards the room the air falls while the door stands open, and how fast it comes back; own estimate, no source.</summary>
    const double OpenDoor = .5;

    static readonly TimeSpan Recovery = TimeSpan.FromMinutes(4);

    /// <summary>What foil lets through of the heat and of the drying; own estimate, no source.</summary>
    const double ThroughFoil = .7;

    readonly Roasting roasting;
    readonly List<Moment> moments = [];

    public OvenAir(Roasting roasting, TimeSpan step) => (this.roasting, Step) = (roasting, step);

    public TimeSpan Step { get; }

    /// <param name="Celsius">Of the air.</param>
    /// <param name="Reaches">From 0 to 1, of its heat and of its drying.</param>
    public readonly record struct Moment(double Celsius, double Reaches);

    public Moment this[int step]
    {
        get
        {
            while (moments.Count <= step)
            {
                moments.Add(During(moments.Count));
            }

            return moments[step];
        }
    }

    Moment During(int step)
    {
        // The mean of a few moments, so that a door open for less than a step is not missed.
        const int looks = 4;
        double celsius = 0, covered = 0;
        for (var look = 0; look < looks; look++)
        {
            var at = roasting.In + (Step * (step + ((look + .5) / looks)));
            celsius += WithDoors(at) / looks;
            covered += roasting.Foil.Any(foil => foil.From <= at && !(foil.To <= at)) ? 1.0 / looks : 0;
        }

        return new(celsius, 1 - (covered * (1 - ThroughFoil)));
    }

    double WithDoors(DateTimeOffset at)
    {
        var air = roasting.AirAt(at);
        var fallen = roasting.Doors.Where(door => door.At <= at).Sum(door =>
        {
            var shut = door.At + door.Lasting;
            // Half a minute lets half of it out; longer lets out more, but never all.
            var lost = OpenDoor * (1 - Math.Exp(-door.Lasting.TotalSeconds / 30)) / (1 - Math.Exp(-1));
            return Math.Min(.8, lost) * (at < shut ? 1 : Math.Exp(-(at - shut) / Recovery));
        });
        return air - ((air - roasting.RoomCelsius) * Math.Min(.8, fallen));
    }
}
