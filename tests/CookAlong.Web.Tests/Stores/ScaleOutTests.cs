using CookAlong.Benchmarks.Kitchens;

namespace CookAlong.Web.Tests.Stores;

/// <summary>deploy/scale-out as it is run, on loopback: two server processes, PostgreSQL, Redis, nginx.</summary>
public sealed class ScaleOutTests
{
    [Fact]
    public async Task Either_server_killed_in_the_middle_of_a_run_loses_and_doubles_nothing()
    {
        Assert.SkipWhen(TwoNodes.Missing is not null, TwoNodes.Missing ?? "");
        await using var nodes = await TwoNodes.StartAsync();

        var report = await CrashLoop.RunAsync(nodes.First, [nodes.First, nodes.Second], kills: 4, seed: 1);

        Assert.Equal((0, 0, 0, 0, 0), (report.CommandsLost, report.CommandsDoubled, report.CallsLost, report.AnswersDoubled, report.Refused));
        Assert.True(report.Acknowledged > 50, $"only {report.Acknowledged} taps were answered");
        Assert.True(report.Calls > 0, "no call was heard");
    }
}
