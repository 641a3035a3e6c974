using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

public sealed class EscalationTests
{
    static readonly DateTimeOffset due = Clock(14, 10);

    static Call Call(CallPriority priority, bool isAcknowledged = false) =>
        new(new CallId("out:roast"), due, CallKind.Out, priority, Roast, null, null, null, null, isAcknowledged);

    [Theory]
    [InlineData(-1, null)]
    [InlineData(0, CallReach.Concerned)]
    [InlineData(29, CallReach.Concerned)]
    [InlineData(30, CallReach.Everybody)]
    [InlineData(89, CallReach.Everybody)]
    [InlineData(90, CallReach.Beyond)]
    [InlineData(3600, CallReach.Beyond)]
    public void A_call_nobody_answers_reaches_further(int seconds, CallReach? reach)
    {
        Assert.Equal(reach, Escalation.ReachOf(Call(CallPriority.High), due.AddSeconds(seconds)));
        Assert.Equal(reach, Escalation.ReachOf(Call(CallPriority.Medium), due.AddSeconds(seconds)));
    }

    [Fact]
    public void Information_stays_with_whom_it_concerns() => Assert.Equal(CallReach.Concerned, Escalation.ReachOf(Call(CallPriority.Low), due.AddHours(1)));

    [Fact]
    public void An_answered_call_reaches_nobody() => Assert.Null(Escalation.ReachOf(Call(CallPriority.High, isAcknowledged: true), due.AddHours(1)));

    [Fact]
    public void Every_kind_of_call_has_exactly_one_hazard_on_the_heat_or_off_it()
    {
        foreach (var kind in Enum.GetValues<CallKind>())
        {
            Assert.InRange(Hazards.All.Count(one => one.Kind == kind && one.IsOnHeat is true or null), 0, 1);
            Assert.InRange(Hazards.All.Count(one => one.Kind == kind && one.IsOnHeat is false or null), 0, 1);
            Assert.Contains(Hazards.All, one => one.Kind == kind);
        }
    }
}
