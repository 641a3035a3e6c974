using System.Collections.Immutable;
using CookAlong.Domain.Debrief.Learning.Ovens;

namespace CookAlong.Domain.Tests.Debrief.Ovens;

public sealed class OvenFitTests
{
    /// <summary>An oven whose figures are known, read as the guided half hour reads it.</summary>
    sealed record Oven(double Heats, double Settles, double Recovers, double Cools)
    {
        const double DoorOpens = 26, Shut = 26.5, Off = 34;

        double At(double minute) => minute switch
        {
            < DoorOpens => Math.Min(Settles, 20 + (Heats * minute)),
            < Off => Math.Min(Settles, Settles - 40 + (40 * (minute - Shut) / Recovers)),
            _ => Settles - (Cools * (minute - Off)),
        };

        public OvenTrial Measured(Random? luck = null, double noise = 0, double wrong = 0)
        {
            double[] minutes = [0, 2, 4, 6, 8, 10, 12, 14, 17, 20, 23, 25, 27.5, 29, 30.5, 32, 33.5, 36, 39, 42, 45, 48];
            double Read(double minute) => At(minute) + (luck is null ? 0
                : luck.NextDouble() < wrong ? luck.Next(-80, 80)
                : noise * ((luck.NextDouble() + luck.NextDouble() + luck.NextDouble()) - 1.5));
            return new OvenTrial(180, [.. minutes.Select(minute => new OvenReading(minute, Read(minute)))], Shut, Off);
        }
    }

    [Theory]
    [InlineData(12, 165, 3, 4)]
    [InlineData(8, 175, 2, 2)]
    [InlineData(11, 180, 5, 6)]
    public void What_an_oven_does_is_found_from_clean_readings(double heats, double settles, double recovers, double cools)
    {
        var learned = OvenFit.Of([new Oven(heats, settles, recovers, cools).Measured()], []);

        Assert.Empty(learned.Doubts);
        Assert.Equal(heats, learned.HeatUpPerMinute!.Value.Value, 0.01);
        Assert.Equal(180 - settles, learned.ReadsHighBy!.Value.Value, 0.01);
        Assert.Equal(cools, learned.CoolDownPerMinute!.Value.Value, 0.01);
        // As hot again is five degrees below: of forty degrees lost, seven eighths of the way.
        Assert.Equal(recovers * 35 / 40, learned.RecoveryMinutes!.Value.Value, 0.75);
    }

    [Fact]
    public void Noise_and_wrong_readings_move_it_little()
    {
        var luck = new Random(8);
        var missed = 0;
        for (var oven = 0; oven < 200; oven++)
        {
            var (heats, settles, cools) = (7 + (6 * luck.NextDouble()), 160 + luck.Next(40), 2 + (4 * luck.NextDouble()));
            var learned = OvenFit.Of([new Oven(heats, settles, 3, cools).Measured(luck, noise: 4, wrong: 0.06)], []);
            var isNear = (learned.HeatUpPerMinute is not { } heat || Math.Abs(heat.Value - heats) < heats * 0.2)
                && (learned.ReadsHighBy is not { } high || Math.Abs(high.Value - (180 - settles)) < 6)
                && (learned.CoolDownPerMinute is not { } cool || Math.Abs(cool.Value - cools) < 1);
            missed += isNear ? 0 : 1;
        }

        Assert.InRange(missed, 0, 10);
    }

    [Fact]
    public void Several_measurings_count_alike_so_that_a_bad_day_is_outvoted()
    {
        var good = new Oven(10, 170, 3, 4).Measured();
        var bad = new Oven(5, 140, 3, 9).Measured();
        var learned = OvenFit.Of([good, bad, good], []);
        Assert.Equal((10, 10, 3), (Math.Round(learned.HeatUpPerMinute!.Value.Value, 2), Math.Round(learned.ReadsHighBy!.Value.Value, 2), learned.HeatUpPerMinute.Value.Seen));
    }

    [Fact]
    public void Too_few_readings_teach_nothing_and_say_so()
    {
        var whole = new Oven(12, 170, 3, 4).Measured();
        var learned = OvenFit.Of([whole with { Readings = [whole.Readings[0], whole.Readings[3], whole.Readings[10]] }], []);
        Assert.False(learned.HasFigures);
        Assert.Equal(
            [OvenPart.Heating, OvenPart.Hot, OvenPart.Cooling, OvenPart.Door],
            learned.Doubts.Where(doubt => doubt.Why == OvenWhy.TooFew).Select(doubt => doubt.Part));
    }

    [Fact]
    public void Readings_that_contradict_each_other_teach_nothing_and_say_so()
    {
        ImmutableArray<OvenReading> wild = [.. Enumerable.Range(0, 24).Select(one => new OvenReading(one * 2, one % 2 == 0 ? 60 + (one * 3) : 190 - (one * 4)))];
        var learned = OvenFit.Of([new OvenTrial(180, wild, null, 30)], []);
        Assert.Null(learned.CoolDownPerMinute);
        Assert.Null(learned.HeatUpPerMinute);
        Assert.Contains(learned.Doubts, doubt => doubt.Why is OvenWhy.Contradictory);
    }

    [Fact]
    public void An_oven_that_cools_while_it_is_said_to_heat_teaches_nothing()
    {
        ImmutableArray<OvenReading> falling = [.. Enumerable.Range(0, 8).Select(one => new OvenReading(one * 2, 180 - (one * 15)))];
        Assert.False(OvenFit.Of([new OvenTrial(180, falling, null, null)], []).HasFigures);
    }

    [Fact]
    public void Three_meals_taps_tell_how_it_heats_and_two_do_not()
    {
        HotTap[] taps = [new(20, 20, 200), new(18, 20, 200), new(60, 20, 180)];
        Assert.Equal(9, OvenFit.Of([], taps).HeatUpPerMinute!.Value.Value, 0.01);
        Assert.Null(OvenFit.Of([], taps[..2]).HeatUpPerMinute);
        HotTap[] apart = [new(5, 20, 200), new(18, 20, 200), new(60, 20, 180)];
        Assert.Equal([new OvenDoubt(OvenPart.Heating, OvenWhy.Contradictory)], OvenFit.Of([], apart).Doubts);
    }

    [Fact]
    public void Three_entries_while_cooking_tell_how_far_the_dial_is_out_and_two_do_not()
    {
        DialReading[] entries = [new(160, 141), new(200, 178), new(160, 138)];
        Assert.Equal(22, OvenFit.Of([], [], entries).ReadsHighBy!.Value.Value, 0.01);
        var few = OvenFit.Of([], [], entries[..2]);
        Assert.Null(few.ReadsHighBy);
        Assert.Equal([new OvenDoubt(OvenPart.Hot, OvenWhy.TooFew)], few.Doubts);
        Assert.Empty(OvenFit.Of([], [], []).Doubts);
    }

    [Fact]
    public void Entries_of_an_oven_that_is_out_by_a_known_amount_find_it_through_noise_and_slips()
    {
        var luck = new Random(20);
        for (var oven = 0; oven < 50; oven++)
        {
            var high = luck.Next(-30, 31);
            DialReading[] entries = [.. Enumerable.Range(0, 12).Select(one => new DialReading(180, one % 6 == 5 ? luck.Next(20, 300) : 180 - high + (8 * (luck.NextDouble() - .5))))];
            Assert.Equal(high, OvenFit.Of([], [], entries).ReadsHighBy!.Value.Value, 4.0);
        }
    }

    [Fact]
    public void Entries_that_contradict_each_other_or_tell_of_no_oven_teach_nothing_and_say_so()
    {
        Assert.Equal([new OvenDoubt(OvenPart.Hot, OvenWhy.Contradictory)], OvenFit.Of([], [], [new(180, 100), new(180, 150), new(180, 200), new(180, 240)]).Doubts);
        Assert.Equal([new OvenDoubt(OvenPart.Hot, OvenWhy.Unlikely)], OvenFit.Of([], [], [new(180, 60), new(180, 62), new(180, 58)]).Doubts);
    }

    [Fact]
    public void A_measuring_and_a_meal_s_entries_count_alike()
    {
        var learned = OvenFit.Of([new Oven(10, 170, 3, 4).Measured()], [], [new(160, 140), new(160, 140), new(160, 140)]);
        Assert.Equal((15, 2), (Math.Round(learned.ReadsHighBy!.Value.Value, 2), learned.ReadsHighBy.Value.Seen));
    }
}
