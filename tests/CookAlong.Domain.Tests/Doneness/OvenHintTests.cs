using CookAlong.Domain.Debrief.Learning.Ovens;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Tests.Doneness.Synthetic;

namespace CookAlong.Domain.Tests.Doneness;

/// <summary>What joints say of their oven, on simulated ones in ovens that are out by a known amount. The correction was chosen on seeds from 90,000; these are others.</summary>
public sealed class OvenHintTests(ITestOutputHelper output)
{
    static IEnumerable<OvenHint?> Roasted(int seed, int joints, double off) => Enumerable.Range(seed, joints)
        .Select(number => new SyntheticRoast(new Random(number), cubes: 5, ovenOff: off))
        .Select(roast => OvenHint.Of(roast.Roasting, roast.Until(.95)));

    static JointReading[] Joints(int seed, int joints, double off) =>
        [.. Roasted(seed, joints, off).Where(hint => hint is not null).Select(hint => new JointReading(-hint!.Value.WarmerBy, hint.Value.Error))];

    [Theory]
    [InlineData(-30)]
    [InlineData(30)]
    public void A_dozen_joints_find_an_oven_that_is_well_off(int off)
    {
        foreach (var seed in new[] { 95_000, 96_000, 97_000 })
        {
            var learned = OvenFit.Of([], [], [], Joints(seed, 12, off));
            output.WriteLine($"{off}: {learned.ReadsHighBy?.Value:0.0} by {learned.ByJoints}");
            Assert.NotNull(learned.ReadsHighBy);
            Assert.Equal(-off, learned.ReadsHighBy.Value.Value, 16.0);
            Assert.True(learned.ByJoints >= 8);
        }
    }

    [Fact]
    public void Of_an_oven_that_is_right_they_say_nothing()
    {
        foreach (var seed in new[] { 95_000, 96_000, 97_000 })
        {
            Assert.Null(OvenFit.Of([], [], [], Joints(seed, 12, 0)).ReadsHighBy);
        }
    }

    [Fact]
    public void A_single_joint_is_unsure_by_more_than_ovens_are_out() =>
        Assert.All(Roasted(98_000, 8, -30).Where(hint => hint is not null), hint => Assert.InRange(hint!.Value.Error, 12, 80));

    [Fact]
    public void Few_readings_and_readings_that_are_not_believed_say_nothing()
    {
        var roast = new SyntheticRoast(new Random(98_100), cubes: 5, ovenOff: -30);
        Assert.NotNull(OvenHint.Of(roast.Roasting, roast.Readings));
        Assert.Null(OvenHint.Of(roast.Roasting, roast.Readings[..5]));
        Assert.Null(OvenHint.Of(roast.Roasting, [.. roast.Readings[^6..]]));
        Assert.Null(OvenHint.Of(roast.Roasting, [.. roast.Readings, roast.Readings[^1] with { Celsius = 20, At = roast.Readings[^1].At.AddMinutes(1) }]));
    }

    [Fact]
    public void Joints_that_contradict_each_other_and_few_of_them_teach_nothing()
    {
        JointReading[] alike = [new(40, 18), new(45, 20), new(35, 18), new(42, 22)];
        Assert.NotNull(OvenFit.Of([], [], [], alike).ReadsHighBy);
        Assert.Null(OvenFit.Of([], [], [], alike[..3]).ReadsHighBy);
        Assert.Null(OvenFit.Of([], [], [], [new(120, 18), new(-60, 18), new(110, 18), new(-40, 18), new(90, 18)]).ReadsHighBy);
    }

    [Fact]
    public void What_a_thermometer_showed_outweighs_every_joint()
    {
        JointReading[] joints = [new(40, 18), new(45, 20), new(35, 18), new(42, 22)];
        var learned = OvenFit.Of([], [], [new(160, 158), new(160, 155), new(180, 177)], joints);
        Assert.Equal((3, 0), (Math.Round(learned.ReadsHighBy!.Value.Value), learned.ByJoints));
    }

    [Fact]
    public void What_they_say_is_drawn_towards_the_dial()
    {
        var learned = OvenFit.Of([], [], [], [new(40, 18), new(40, 18), new(40, 18), new(40, 18)]);
        Assert.InRange(learned.ReadsHighBy!.Value.Value, 20, 35);
        Assert.Equal(4, learned.ByJoints);
    }
}
