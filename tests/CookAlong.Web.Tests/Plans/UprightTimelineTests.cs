using Bunit;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class UprightTimelineTests : BunitContext
{
    [Fact]
    public async Task Of_two_helpers_of_one_name_each_can_be_looked_at()
    {
        var meal = AlderLane.Meal with { Helpers = [.. AlderLane.Meal.Helpers.Select(helper => helper with { Name = "Kim" })] };
        var timeline = Render<UprightTimeline>(parameters => parameters.Add(one => one.Meal, meal).Add(one => one.Plan, AlderLane.Plan).Add(one => one.Width, 360));

        await timeline.InvokeAsync(() => timeline.FindAll(".choose button")[^1].Click());

        Assert.Equal("true", timeline.FindAll(".choose button")[^1].GetAttribute("aria-pressed"));
        Assert.Contains("child-safe only", timeline.Find(".note").TextContent, StringComparison.Ordinal);
    }
}
