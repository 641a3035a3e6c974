using System.Globalization;
using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Tests.Doneness.Heat;

/// <summary>
/// Held against the series solutions of Incropera and DeWitt, "Fundamentals of Heat and Mass Transfer", chapter 5: eigenvalues of
/// z tan z = Bi, z J1(z)/J0(z) = Bi and 1 - z cot z = Bi; the values were computed from the full series in high precision.
/// </summary>
public sealed class ConductionTests
{
    const string Folder = "COOKALONG_REFERENCE";

    static readonly Substance Plain = new(1, 1, 0);

    [Theory]
    [InlineData(0, 0.5, 0.1, 0.99632141, 0.84389857)]
    [InlineData(0, 0.5, 0.2, 0.97260042, 0.79014655)]
    [InlineData(0, 0.5, 0.5, 0.86411413, 0.68688198)]
    [InlineData(0, 0.5, 1, 0.69838322, 0.55458907)]
    [InlineData(0, 2, 0.1, 0.98777887, 0.55360421)]
    [InlineData(0, 2, 0.2, 0.9178922, 0.457638)]
    [InlineData(0, 2, 0.5, 0.6596184, 0.3131327)]
    [InlineData(0, 2, 1, 0.36955572, 0.17520066)]
    [InlineData(0, 5, 0.1, 0.97730911, 0.30879017)]
    [InlineData(0, 5, 0.2, 0.86488143, 0.23153319)]
    [InlineData(0, 5, 0.5, 0.5231091, 0.13303205)]
    [InlineData(0, 5, 1, 0.22072068, 0.056094024)]
    [InlineData(1, 0.5, 0.1, 0.98753819, 0.81961973)]
    [InlineData(1, 0.5, 0.2, 0.9266595, 0.74082391)]
    [InlineData(1, 0.5, 0.5, 0.71574915, 0.56600242)]
    [InlineData(1, 0.5, 1, 0.459846, 0.36359114)]
    [InlineData(1, 2, 0.1, 0.95938311, 0.50090372)]
    [InlineData(1, 2, 0.2, 0.78998649, 0.37014355)]
    [InlineData(1, 2, 0.5, 0.37239736, 0.1697479)]
    [InlineData(1, 2, 1, 0.10364538, 0.047232867)]
    [InlineData(1, 5, 0.1, 0.92648589, 0.25574843)]
    [InlineData(1, 5, 0.2, 0.67141841, 0.1589173)]
    [InlineData(1, 5, 0.5, 0.20755416, 0.047695267)]
    [InlineData(1, 5, 1, 0.028667632, 0.0065869092)]
    [InlineData(2, 0.5, 0.1, 0.9725305, 0.79326976)]
    [InlineData(2, 0.5, 0.2, 0.86871285, 0.68815326)]
    [InlineData(2, 0.5, 0.5, 0.58004355, 0.45735232)]
    [InlineData(2, 0.5, 1, 0.29407836, 0.23187188)]
    [InlineData(2, 2, 0.1, 0.91239422, 0.44715928)]
    [InlineData(2, 2, 0.2, 0.64333635, 0.28837152)]
    [InlineData(2, 2, 0.5, 0.18893153, 0.083533339)]
    [InlineData(2, 2, 1, 0.024130552, 0.010668614)]
    [InlineData(2, 5, 0.1, 0.84587286, 0.20591978)]
    [InlineData(2, 5, 0.2, 0.47224768, 0.10092235)]
    [InlineData(2, 5, 0.5, 0.065675262, 0.013813015)]
    [InlineData(2, 5, 1, 0.0024137356, 0.00050765316)]
    public void A_body_warms_as_the_series_says(double roundness, double biot, double fourier, double centre, double surface)
    {
        var (core, outside) = Solved(roundness, biot, fourier);
        Assert.Equal(centre, core, 0.001);
        Assert.Equal(surface, outside, 0.001);
    }

    [Fact]
    public void Every_row_of_the_series_table_is_met()
    {
        var file = Path.Combine(Environment.GetEnvironmentVariable(Folder) ?? "", "conduction-series-theta.csv");
        Assert.SkipUnless(File.Exists(file), $"{Folder} names no folder with conduction-series-theta.csv.");
        var rows = File.ReadLines(file).Skip(1).Select(line => line.Split(',')).ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row =>
        {
            double Number(int column) => double.Parse(row[column], CultureInfo.InvariantCulture);
            A_body_warms_as_the_series_says(row[0] switch { "slab" => 0, "cylinder" => 1, "sphere" => 2, var other => throw new InvalidDataException(other) }, Number(1), Number(2), Number(3), Number(4));
        });
    }

    // Incropera and DeWitt, chapter 5, table of one-term coefficients: from Fo 0.2 on the first term is within 2 % of the whole series.
    [Fact]
    public void Later_on_one_term_of_the_series_is_enough()
    {
        var file = Path.Combine(Environment.GetEnvironmentVariable(Folder) ?? "", "conduction-one-term.csv");
        Assert.SkipUnless(File.Exists(file), $"{Folder} names no folder with conduction-one-term.csv.");
        var rows = File.ReadLines(file).Skip(1).Select(line => Array.ConvertAll(line.Split(','), cell => double.Parse(cell, CultureInfo.InvariantCulture))).ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.All(new[] { .2, .5, 1 }, fourier =>
        {
            foreach (var roundness in new[] { 0, 1, 2 })
            {
                var (zeta, first) = (row[1 + (2 * roundness)], row[2 + (2 * roundness)]);
                Assert.Equal(first * Math.Exp(-zeta * zeta * fourier), Solved(roundness, row[0], fourier).Core, 0.02);
            }
        }));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1.4, .2)]
    [InlineData(2, 1)]
    public void What_the_surface_takes_in_is_what_the_body_holds_more(double roundness, double wetness)
    {
        var food = Substance.Of(Composition.LeanMeat);
        var joint = new Conduction(new Body(roundness, .06), food with { PerDegree = 0.001 }, 5, 12);
        var held = joint.Heat;
        for (var step = 0; step < 200; step++)
        {
            joint.Step(new Surface(step % 7 == 0 ? 90 : 200, 20, wetness), step % 3 == 0 ? 30 : 600);
        }

        Assert.True(joint.TakenIn > 1e6);
        Assert.Equal(joint.TakenIn, joint.Heat - held, 1e-7 * joint.TakenIn);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(1e3, 0)]
    [InlineData(1e6, 10)]
    public void No_step_is_too_long_to_stay_between_the_start_and_the_air(double seconds, double shot)
    {
        // A step of eleven days may shoot over a little, and comes back.
        var joint = new Conduction(Body.Cylinder(.05), Substance.Of(Composition.LeanMeat), 5, 20);
        for (var step = 0; step < 50; step++)
        {
            joint.Step(new Surface(180, 25, 0), seconds);
            Assert.All(new[] { joint.Core, joint.Mean, joint.Surface }, celsius => Assert.InRange(celsius, 5 - 1e-6, 180 + shot + 1e-6));
        }

        Assert.True(seconds < 1e3 || Math.Abs(joint.Core - 180) < .1);
    }

    [Fact]
    public void A_soaked_surface_comes_no_higher_than_its_wet_bulb_temperature()
    {
        var joint = new Conduction(Body.Slab(.01), Substance.Of(Composition.LeanMeat), 5, 20);
        for (var step = 0; step < 1000; step++)
        {
            joint.Step(new Surface(180, 25, 1), 60);
        }

        // Kitchen air with 8 g of water a kg, heated to 180 °C, holds 204 kJ/kg; saturated air holds as much at 44.0 °C
        // (1.006 T + w (2501 + 1.86 T); own arithmetic). The wet-bulb temperature lies by it.
        Assert.InRange(joint.Surface, 42.5, 45.5);
        Assert.Equal(joint.Surface, joint.Core, 0.1);
    }

    [Fact]
    public void A_solid_sphere_of_four_kilograms_takes_what_its_series_says()
    {
        // Own computation from the series: density 1070, k 0.464, c 3530 (Chang, Carpenter and Toledo 1998), h 19.25, radius 0.09628 m,
        // from 4.44 °C in an oven of 162.8 °C to 74 °C: 3.855 h. A real bird is hollow and faster.
        var bird = new Conduction(Body.Sphere(.09628), new Substance(1070 * 3530, .464, 0), 4.44, 40);
        var minutes = 0;
        while (bird.Core < 74)
        {
            bird.Step(new Surface(162.8, 19.25, 0), 60);
            minutes++;
        }

        Assert.Equal(3.855, minutes / 60.0, 0.03);
    }

    static (double Core, double Surface) Solved(double roundness, double biot, double fourier)
    {
        var body = new Conduction(new Body(roundness, 1), Plain, 1, 40);
        for (var step = 0; step < 400; step++)
        {
            body.Step(new Surface(0, biot, 0), fourier / 400);
        }

        return (body.Core, body.Surface);
    }
}
