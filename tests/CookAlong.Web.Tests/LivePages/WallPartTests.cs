using Bunit;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Live.Tablet;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class WallPartTests : BunitContext
{
    [Fact]
    public void A_table_that_comes_late_is_said_in_a_word()
    {
        Assert.Contains("late", Show(View(Crowded)).Find(".wall-times li").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("late", Show(View(Busy)).Find(".wall-times li").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_bar_has_the_time_to_spare_and_the_voice_of_this_screen()
    {
        var page = Show(View(Busy));
        Assert.Equal($"{Busy.BreathingRoom} min spare", page.Find(".wall-room").TextContent);
        Assert.NotEmpty(page.FindAll(".wall-bar [data-arm]"));
    }

    [Fact]
    public void That_nobody_hears_calls_comes_before_the_time_to_spare() =>
        Assert.Equal("Nobody hears calls", Show(View(Busy, screens: Unheard)).Find(".wall-room").TextContent);

    [Fact]
    public void Once_everything_is_done_there_is_no_time_to_run_out_of()
    {
        var page = Show(View(AllDone));

        Assert.Equal("All done", page.Find(".wall-room.calm").TextContent);
        Assert.Equal("Take it to the table.", page.Find(".wall-card h2").TextContent);
    }

    [Fact]
    public void Digits_that_run_are_those_of_the_job_alone()
    {
        var page = Show(View(Busy));
        Assert.NotEmpty(page.FindAll(".wall-line.hot"));
        Assert.All(page.FindAll(".count"), count => Assert.NotNull(count.Closest(".wall-card")));
    }

    IRenderedComponent<WallPart> Show(LiveView view) => Render<WallPart>(with => with.Add(part => part.View, view));
}
