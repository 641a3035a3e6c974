using Bunit;
using CookAlong.Domain.Planning;
using CookAlong.Planner;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class SureWordsTests : BunitContext
{
    [Theory]
    [InlineData(0.8, "80 of 100")]
    [InlineData(0.997, "more than 99 of 100")]
    [InlineData(0.001, "0 of 100")]
    public void A_chance_is_said_in_days_and_never_as_certainty(double chance, string words) => Assert.Equal(words, SureWords.Of100(chance));

    [Fact]
    public void A_spread_is_said_by_the_clock()
    {
        Assert.Equal("Main course: nine days of ten at 15:00.", SureWords.Spread(Spread(_ => 0), AlderLane.Meal));
        Assert.Equal("Main course: at 15:00 on most days, nine of ten by 15:08.", SureWords.Spread(Spread(day => day < 12 ? 0 : day - 9.5), AlderLane.Meal));
        Assert.Equal("Main course: half of the days by 15:10, nine of ten by 15:18.", SureWords.Spread(Spread(day => day), AlderLane.Meal));
    }

    [Fact]
    public void What_five_minutes_buy_is_said_where_they_buy_something()
    {
        Assert.Equal("the table waits for it on 60 of 100 late days; 5 spare minutes after it save 4 days in 100", SureWords.Decides(new(new("goose-roast"), 0.6, 0.04)));
        Assert.Equal("the table waits for it on 60 of 100 late days; 5 spare minutes after it save 1 day in 100", SureWords.Decides(new(new("goose-roast"), 0.6, 0.01)));
        Assert.Equal("the table waits for it on 60 of 100 late days", SureWords.Decides(new(new("goose-roast"), 0.6, 0.001)));
    }

    [Fact]
    public void Food_that_stands_too_long_is_named()
    {
        var calm = AlderLane.Plan.Confidence!;
        Assert.Null(SureWords.Stands(calm, AlderLane.Meal));
        Assert.Contains("On 12 of 100 days something stands", SureWords.Stands(calm with { TooLong = 0.12, Standing = [new(new("pears-grill"), 0.1)] }, AlderLane.Meal), StringComparison.Ordinal);
        Assert.Contains("“Grill the pears”", SureWords.Stands(calm with { TooLong = 0.12, Standing = [new(new("pears-grill"), 0.1)] }, AlderLane.Meal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wish_that_no_buffer_reaches_is_said_so()
    {
        var none = new Buffered(AlderLane.Meal, AlderLane.Plan, AlderLane.Plan);

        Assert.False(none.IsSurer);
        Assert.StartsWith("No buffer was found that reaches 99 of 100.", SureWords.Unreached(none, 0.99), StringComparison.Ordinal);
        Assert.Null(SureWords.Unreached(none, 0.9));
    }

    [Fact]
    public void A_price_that_may_be_chance_is_said_to_be()
    {
        var found = AlderLane.Plan with { Status = PlanStatus.Feasible, Gap = 0.034 };

        Assert.EndsWith("a difference may be chance.", SureWords.Price(new(AlderLane.Meal, found, found)), StringComparison.Ordinal);
        Assert.Equal("It costs nothing that can be counted.", SureWords.Price(new(AlderLane.Meal, AlderLane.Plan, AlderLane.Plan)));
    }

    [Fact]
    public void Twenty_days_are_twenty_dots_and_the_late_ones_are_told_apart()
    {
        var picture = Render<TwentyDays>(parameters => parameters.Add(one => one.Meal, AlderLane.Meal).Add(one => one.Spread, Spread(day => day)));

        Assert.Equal((11, 9), (picture.FindAll("circle.good").Count, picture.FindAll("circle.late").Count));
        Assert.Equal("Main course on twenty days: on 11 of them within 10 minutes.", picture.Find("svg").GetAttribute("aria-label"));
    }

    static TableSpread Spread(Func<int, double> late) => new(new("main"), [.. Enumerable.Range(0, TableSpread.DayCount).Select(late)]);
}
