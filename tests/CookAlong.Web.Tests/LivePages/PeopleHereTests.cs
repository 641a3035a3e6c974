using Bunit;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Tablet;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class PeopleHereTests : BunitContext
{
    static readonly PersonId TobisPhone = People[2].Person!.Value;

    [Fact]
    public void Whoever_hears_calls_is_marked_so_and_nobody_else() =>
        Assert.Equal(["Tobi"], Hears(new ScreenState(IsBoard: false, IsArmed: true, IsAwake: false)));

    [Fact]
    public void A_screen_that_is_not_armed_hears_nothing() => Assert.Empty(Hears(ScreenState.Unknown));

    [Fact]
    public void A_phone_that_fell_silent_is_said_to_be() =>
        Assert.Contains("phone silent since 13:10", Show(new ScreensHere([], _ => At(13, 10))).Markup, StringComparison.Ordinal);

    IEnumerable<string> Hears(ScreenState tobi) =>
        Show(new ScreensHere([new ScreenHere(TobisPhone, tobi)], _ => At(13, 24)))
            .FindAll("li").Where(person => person.QuerySelector("[aria-label='hears calls']") is not null).Select(person => person.QuerySelector("b")!.TextContent);

    IRenderedComponent<PeopleHere> Show(ScreensHere screens) => Render<PeopleHere>(with => with.Add(part => part.View, View(Busy, screens: screens)));
}
