using CookAlong.Domain;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class TimeScaleTests
{
    static readonly Minute Noon = AlderLane.At("12:00");

    [Fact]
    public void An_hour_is_as_wide_in_the_morning_as_in_the_evening()
    {
        var scale = TimeScale.Of([(Noon, Noon + 300)], width: 660, margin: 15);

        Assert.Equal(scale.X(Noon + 60) - scale.X(Noon), scale.X(Noon + 300) - scale.X(Noon + 240), precision: 6);
        Assert.Equal(660, scale.Width, precision: 6);
    }

    [Fact]
    public void The_empty_night_is_folded()
    {
        var nextDay = Noon + (20 * 60);
        var scale = TimeScale.Of([(Noon, Noon + 60), (nextDay, nextDay + 60)], width: 500, margin: 0);

        var fold = Assert.Single(scale.Folds);
        Assert.Equal((Noon + 60, nextDay), (fold.From, fold.To));
        Assert.Equal(TimeScale.FoldWidth, scale.X(nextDay) - scale.X(Noon + 60), precision: 6);
    }

    [Fact]
    public void A_short_pause_in_the_work_is_not_folded()
    {
        var scale = TimeScale.Of([(Noon, Noon + 60), (Noon + 150, Noon + 200)], width: 500);

        Assert.Empty(scale.Folds);
    }

    [Fact]
    public void Hours_are_the_household_s_hours_and_never_inside_a_fold()
    {
        var nextDay = Noon + (20 * 60);
        var scale = TimeScale.Of([(Noon + 20, Noon + 100), (nextDay, nextDay + 60)], width: 600, margin: 0);

        var hours = scale.Hours(AlderLane.Zone).Select(at => PlaceNames.Clock(at, AlderLane.Zone));

        Assert.Equal(["12:30", "13:00", "13:30", "08:00", "08:30", "09:00"], hours);
    }
}
