using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Tests.Doneness.Synthetic;

/// <summary>The simulated joints are held against exact solutions too: what judges the forecast must not be wrong itself.</summary>
public sealed class VoxelJointTests
{
    static readonly Substance Meat = Substance.Of(Composition.LeanMeat) with { PerDegree = 0 };

    [Fact]
    public void A_brick_warms_as_three_slabs_do()
    {
        var brick = Joint((.04, .06, .05), 60);
        var exact = new FiniteBody([Body.Slab(.04), Body.Slab(.06), Body.Slab(.05)]).Core(Meat, 20, 5, [.. Enumerable.Repeat(170.0, 60)], 60);
        Assert.Equal(exact[^1], Warmed(brick, 3600), 1.5);
    }

    [Fact]
    public void A_ball_warms_as_a_sphere_does()
    {
        var sphere = new Conduction(Body.Sphere(.05), Meat, 5, 40);
        for (var minute = 0; minute < 60; minute++)
        {
            sphere.Step(new Surface(170, 20, 0), 60);
        }

        Assert.Equal(sphere.Core, Warmed(Joint((.05, .05, .05), 2), 3600), 2.5);
    }

    static VoxelJoint Joint((double, double, double) half, double power) => new(half, power, 5, Meat.HeatCapacity, Meat.Conductivity, 0, 10);

    static double Warmed(VoxelJoint joint, double seconds)
    {
        var steps = (int)Math.Ceiling(seconds / joint.Seconds);
        for (var step = 0; step < steps; step++)
        {
            joint.Step(170, 20, 1, 0, seconds / steps);
        }

        return joint.Coldest;
    }
}
