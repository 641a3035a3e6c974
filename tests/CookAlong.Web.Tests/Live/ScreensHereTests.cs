using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;

namespace CookAlong.Web.Tests.Live;

public sealed class ScreensHereTests
{
    static readonly PersonId ivo = new(new Guid(1, 0, 0, new byte[8])), maren = new(new Guid(2, 0, 0, new byte[8]));

    static readonly DateTimeOffset noon = new(2026, 12, 20, 12, 0, 0, TimeSpan.Zero);

    static ScreensHere Of(params ScreenHere[] screens) => new([.. screens], _ => noon);

    [Fact]
    public void Somebody_is_armed_while_one_of_their_screens_is()
    {
        var here = Of(new ScreenHere(ivo, ScreenState.Unknown), new ScreenHere(ivo, new ScreenState(false, IsArmed: true, false)));
        Assert.True(here.IsArmed(ivo));
        Assert.False(here.IsArmed(maren));
        Assert.True(here.IsAnyArmed);
        Assert.False(Of(new ScreenHere(ivo, ScreenState.Unknown)).IsAnyArmed);
    }

    [Fact]
    public void A_phone_is_silent_two_minutes_after_its_last_screen_closed()
    {
        var here = Of(new ScreenHere(maren, ScreenState.Unknown));
        Assert.Null(here.SilentSince(ivo, noon.AddSeconds(119)));
        Assert.Equal(noon, here.SilentSince(ivo, noon.AddSeconds(120)));
        Assert.Null(here.SilentSince(maren, noon.AddHours(1)));
    }

    [Fact]
    public void The_mark_changes_with_what_screens_say_and_not_with_their_order()
    {
        var (one, other) = (new ScreenHere(ivo, ScreenState.Unknown), new ScreenHere(maren, ScreenState.Unknown));
        Assert.Equal(Of(one, other).Mark, Of(other, one).Mark);
        Assert.NotEqual(Of(one).Mark, Of(one with { State = new ScreenState(false, IsArmed: true, false) }).Mark);
        Assert.NotEqual(Of(one).Mark, Of(one, other).Mark);
    }
}
