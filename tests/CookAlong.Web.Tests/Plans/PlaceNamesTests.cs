using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class PlaceNamesTests
{
    // 200 °C wanted inside; a fan oven is set 20 lower, a dial that shows 10 too much is set 10 higher.
    [Theory]
    [InlineData(false, 0, "")]
    [InlineData(true, 0, ", fan 180")]
    [InlineData(false, 10, ", dial 210")]
    [InlineData(true, -15, ", fan 165")]
    public void The_dial_is_told_where_it_is_not_what_is_wanted_inside(bool fan, int readsHighBy, string words) =>
        Assert.Equal(words, PlaceNames.OnDial(AlderLane.Meal.Kitchen.Ovens[0] with { Fan = fan, ReadsHighBy = readsHighBy }, 200));
}
