using Bunit;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class TimelineTests : BunitContext
{
    public TimelineTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public async Task A_day_that_the_next_plan_has_no_work_on_gives_way_to_all_of_it()
    {
        var timeline = Render<Timeline>(parameters => parameters.Add(one => one.Meal, AlderLane.Meal).Add(one => one.Plan, AlderLane.Plan).Add(one => one.StartWidth, 1200));
        await timeline.InvokeAsync(() => timeline.FindAll("button").Single(button => button.TextContent == "Friday 18 December").Click());
        Assert.Empty(timeline.FindAll(".flag"));
        var onTheDay = AlderLane.Plan with
        {
            Steps = [.. AlderLane.Plan.Steps.Select(step => step.Start < AlderLane.At("00:00") ? step with { Start = step.Start + (16 * 60), End = step.End + (16 * 60) } : step)],
        };

        timeline.Render(parameters => parameters.Add(one => one.Plan, onTheDay));

        Assert.Equal(2, timeline.FindAll(".flag").Count);
    }
}
