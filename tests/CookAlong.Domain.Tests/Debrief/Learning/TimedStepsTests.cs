namespace CookAlong.Domain.Tests.Debrief.Learning;

public sealed class TimedStepsTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(5)]
    public void Of_real_people_the_range_holds_eight_in_ten_and_the_likely_time_beats_the_average_and_the_first_recording(int known)
    {
        Assert.SkipUnless(TimedSteps.IsThere, TimedSteps.Missing);

        var foretold = TimedSteps.Foretell(known);

        output.WriteLine($"{foretold}");
        Assert.True(foretold.Count > 3_000, $"{foretold.Count}");
        Assert.InRange(foretold.Held, .75, .85);
        Assert.True(foretold.Error < foretold.OfAverage && foretold.Error < foretold.OfFirst, $"{foretold}");
    }
}
