using CookAlong.Benchmarks.Kitchens;

namespace CookAlong.Web.Tests.Live;

public sealed class CrashTests
{
    // The long loop is the benchmark's: part "crashes".
    [Fact]
    public async Task Twenty_kills_lose_and_double_nothing()
    {
        var report = await CrashLoop.RunAsync(kills: 20, seed: 1);
        Assert.Equal((0, 0, 0, 0, 0), (report.CommandsLost, report.CommandsDoubled, report.CallsLost, report.AnswersDoubled, report.Refused));
        Assert.True(report.Acknowledged > 100, $"only {report.Acknowledged} taps were answered");
        Assert.True(report.CutOff > 0, "no kill came while a tap was on its way");
        Assert.True(report.Calls > 0, "no call was heard");
    }
}
