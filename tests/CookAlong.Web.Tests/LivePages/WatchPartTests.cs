using Bunit;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Dining;
using CookAlong.Web.Features.Live.Wording;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class WatchPartTests : BunitContext
{
    [Fact]
    public void The_dining_room_reads_when_each_course_comes_and_how_far_its_dishes_are()
    {
        var main = Show(Busy).FindAll("section")[0];
        Assert.Contains("in about 1 hour 35 minutes", main.TextContent, StringComparison.Ordinal);
        Assert.Equal("in the oven", FarOf(main, "Goose"));
        Assert.Equal("on the stove", FarOf(main, "Gravy"));
        Assert.Equal("being made", FarOf(main, "Herb dumplings"));
        Assert.Equal("ready", FarOf(main, "Red cabbage"));
        Assert.Equal("still to come", FarOf(main, "Kale"));
    }

    [Fact]
    public void There_is_nothing_to_press_and_nothing_late_to_read()
    {
        var page = Show(Crowded);
        Assert.Empty(page.FindAll("button, a, details"));
        Assert.DoesNotContain("late", page.Markup, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("over", page.Find("main").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_course_that_is_cooked_when_its_time_has_come_is_at_the_table()
    {
        var steamed = SampleKitchen.Card(Pudding, CardState.Done, At(13, 0), At(15, 20));
        var pudding = Show(Busy with { At = At(16, 10), Now = [], Done = [steamed] }).FindAll("section")[1];
        Assert.Equal("at the table", pudding.QuerySelector(".when")!.TextContent);
        Assert.Equal("at the table", FarOf(pudding, "Steamed pudding"));
    }

    [Theory]
    [InlineData(-3, "soon")]
    [InlineData(7, "soon")]
    [InlineData(8, "in about 10 minutes")]
    [InlineData(22, "in about 20 minutes")]
    [InlineData(23, "in about 25 minutes")]
    [InlineData(61, "in about an hour")]
    [InlineData(96, "in about 1 hour 35 minutes")]
    [InlineData(121, "in about 2 hours")]
    [InlineData(1055, "in about 18 hours")]
    public void Times_are_words_rounded_to_five_minutes_or_an_hour(int minutes, string words) =>
        Assert.Equal(words, Words.Roughly(TimeSpan.FromMinutes(minutes)));

    static string FarOf(AngleSharp.Dom.IElement course, string dish) =>
        course.QuerySelectorAll("li").Single(line => line.FirstElementChild!.TextContent == dish).QuerySelector(".how-far")!.TextContent;

    IRenderedComponent<WatchPart> Show(Board board) => Render<WatchPart>(parts => parts.Add(part => part.View, View(board, role: Role.Watcher)));
}
