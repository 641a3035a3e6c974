using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Tests.Doneness.Heat;

/// <summary>The product of the series solutions of its parts (Incropera and DeWitt, chapter 5), which were computed in high precision.</summary>
public sealed class FiniteBodyTests
{
    static readonly Substance Plain = new(1, 1, 0);

    [Fact]
    public void A_cube_is_three_slabs()
    {
        // Slab, Bi 2, Fo 0.5: 0.6596184.
        var cube = new FiniteBody([Body.Slab(1), Body.Slab(1), Body.Slab(1)]);
        Assert.Equal(Math.Pow(.6596184, 3), cube.Left(Plain, 2, .5 / 200, 200)[^1], 0.001);
    }

    [Fact]
    public void A_short_cylinder_is_a_cylinder_and_a_slab()
    {
        // Bi 2, Fo 0.2: cylinder 0.78998649, slab 0.9178922.
        var tin = new FiniteBody([Body.Cylinder(1), Body.Slab(1)]);
        Assert.Equal(.78998649 * .9178922, tin.Left(Plain, 2, .2 / 200, 200)[^1], 0.001);
    }

    [Fact]
    public void Air_that_changes_is_answered_jump_by_jump()
    {
        var substance = Substance.Of(Composition.LeanMeat) with { PerDegree = 0 };
        var air = Enumerable.Range(0, 120).Select(minute => minute < 60 ? 180.0 : minute < 62 ? 90 : 200).ToArray();
        var expected = new Conduction(Body.Cylinder(.05), substance, 5, 40);
        foreach (var celsius in air)
        {
            expected.Step(new Surface(celsius, 20, 0), 60);
        }

        Assert.Equal(expected.Core, new FiniteBody([Body.Cylinder(.05)]).Core(substance, 20, 5, air, 60)[^1], 0.05);
    }
}
