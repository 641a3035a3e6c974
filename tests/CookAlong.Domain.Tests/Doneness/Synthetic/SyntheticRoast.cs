using CookAlong.Domain.Doneness;

namespace CookAlong.Domain.Tests.Doneness.Synthetic;

/// <summary>
/// One roast out of many that never were: a joint of its own shape, fat and wetness in an oven that is off and swings, with a probe
/// that is not quite in the middle. The forecast is told the cut, the weight, the programme and the doors that somebody tapped.
/// </summary>
sealed class SyntheticRoast
{
    static readonly DateTimeOffset In = new(2026, 2, 7, 9, 0, 0, TimeSpan.Zero);

    readonly List<(double Minutes, double Probe, double Coldest)> curve = [];

    /// <param name="ovenOff">°C the air is warmer than the programme says; null = by luck, 6 at one standard deviation.</param>
    public SyntheticRoast(Random random, int cubes = 8, double? ovenOff = null)
    {
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var cuts = new[] { Cut.BeefRib, Cut.BeefRound, Cut.LambLegOnTheBone, Cut.LambLegRolled, Cut.PorkLoin, Cut.TurkeyBreast, Cut.VealLoin };
        var cut = cuts[random.Next(cuts.Length)];
        var isLong = cut is Cut.PorkLoin or Cut.VealLoin;
        var kilograms = Between(1, 3.5);
        // Ratios of the axes, then the size that gives the weight.
        var (flat, lengthy, power) = (Between(.75, 1), isLong ? Between(1.7, 2.6) : Between(1.15, 1.9), random.Next(3) switch { 0 => 2.0, 1 => 3.0, _ => 6.0 });
        var fill = power switch { 2 => 4.19, 3 => 5.8, _ => 7.3 };
        var half = Math.Cbrt(kilograms / 1050 / (fill * flat * lengthy));
        var fat = Between(0, 1);
        var meat = new VoxelJoint((half, half * lengthy, half * flat), power, Between(2, 9), 3.77e6 - (.4e6 * fat), .49 - (.067 * fat), .0012 - (.0004 * fat), cubes);
        Celsius = cut == Cut.TurkeyBreast ? 74 : Between(55, 70);
        var (setting, later) = (Between(160, 190), random.Next(3) == 0 ? Between(10, 30) : 0);
        var laterAt = Between(30, 80);
        var doors = Enumerable.Range(0, random.Next(4)).Select(number => (At: 25 + (35 * number) + Between(0, 15), Lasting: Between(.5, 2))).ToArray();
        Roasting = new Roasting(
            new Joint(cut, Math.Round(meat.Kilograms, 1)),
            In,
            later > 0 ? [new(In, setting), new(Moment(laterAt), setting), new(Moment(laterAt + 8), setting + later)] : [new(In, setting)],
            [.. doors.Select(door => new DoorOpening(Moment(door.At), TimeSpan.FromMinutes(door.Lasting)))],
            []);

        var (off, swing, coefficient, below) = (ovenOff ?? (6 * Normal()), Between(2, 8), Between(15, 24), Between(.4, 1));
        var (wet, drying) = (.065 * Math.Exp(.3 * Normal()), Between(120, 400));
        // The probe's tip: a tenth of the way to the surface, any way; one in five is misplaced by up to a quarter and more.
        var tooShort = random.Next(5) == 0 ? 2.5 : 1;
        var tip = (X: tooShort * half * Between(0, .1), Y: tooShort * half * Between(0, .15), Z: tooShort * half * flat * Between(-.1, .1));
        var seconds = Math.Min(30, meat.Seconds);
        for (var minutes = 0.0; meat.Coldest < Celsius + 1 && minutes < 900; minutes += seconds / 60)
        {
            curve.Add((minutes, meat.At(tip.X, tip.Y, tip.Z), meat.Coldest));
            var air = setting + off + (swing * Math.Sin(minutes / 1.7)) + (later * Math.Clamp((minutes - laterAt) / 8, 0, 1));
            foreach (var door in doors.Append((At: 50, Lasting: .4)).Where(door => door.At <= minutes))
            {
                var shut = door.At + door.Lasting;
                air -= (air - 22) * Math.Min(.7, .8 * (1 - Math.Exp(-door.Lasting))) * (minutes < shut ? 1 : Math.Exp((shut - minutes) / 3));
            }

            meat.Step(air, coefficient, below, wet * Math.Exp(-minutes / drying), seconds);
        }

        Truth = curve.First(one => one.Coldest >= Celsius).Minutes;
        var every = Between(3, 6);
        Readings = [.. Enumerable.Range(1, (int)(Truth / every)).Select(number => number * every).Select(minutes =>
            new ProbeReading(Moment(minutes), Math.Round(curve.Last(one => one.Minutes <= minutes).Probe + (.5 * Between(-1, 1)), 1)))];
    }

    public Roasting Roasting { get; }

    public ProbeReading[] Readings { get; }

    /// <summary>Wanted in the middle, °C.</summary>
    public double Celsius { get; }

    /// <summary>Minutes until the coldest point is there.</summary>
    public double Truth { get; }

    /// <summary>The readings up to a part of the cooking.</summary>
    public ProbeReading[] Until(double part) => [.. Readings.Where(reading => (reading.At - In).TotalMinutes <= part * Truth)];

    public static double MinutesOf(DateTimeOffset at) => (at - In).TotalMinutes;

    static DateTimeOffset Moment(double minutes) => In + TimeSpan.FromMinutes(minutes);
}
