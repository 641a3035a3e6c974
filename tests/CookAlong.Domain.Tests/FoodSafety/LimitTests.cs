using CookAlong.Domain.FoodSafety;

namespace CookAlong.Domain.Tests.FoodSafety;

public sealed class LimitTests
{
    [Fact]
    public void Each_temperature_is_what_is_printed() => Assert.All(PublishedRows.Temperatures, row =>
    {
        var limit = Assert.Single(PublishedRows.AllTemperatures, limit => limit.Id == row.Id);
        Assert.Equal(row.Celsius, limit.Celsius, 0.06);
        Assert.Equal(row.Seconds, limit.For?.TotalSeconds ?? 0);
    });

    [Fact]
    public void Each_time_is_what_is_printed() => Assert.All(PublishedRows.Times, row =>
    {
        var limit = Assert.Single(PublishedRows.AllTimes, limit => limit.Id == row.Id);
        Assert.Equal((row.Least, row.Most), (limit.Least.TotalHours, limit.Most.TotalHours));
    });

    [Fact]
    public void Each_thawing_time_is_what_is_printed() => Assert.All(PublishedRows.Thawing, row =>
    {
        var time = Assert.Single(Thawing.All, rule => rule.Id == row.Id).For(row.Kilograms);
        Assert.Equal((row.Least, row.Most), (time.Least.TotalHours, time.Most.TotalHours), (one, other) => Math.Abs(one.Item1 - other.Item1) < .01 && Math.Abs(one.Item2 - other.Item2) < .01);
    });

    // USDA Meat and Poultry Hotline: 3/4 cup of salt to a gallon; overnight to two days. A cup of table salt weighs 292 g (USDA SR28), a gallon is 3.785 l.
    [Fact]
    public void Brine_is_what_is_printed()
    {
        Assert.Equal(TimeSpan.FromDays(2), Brining.InTheFridge.Most);
        Assert.Equal(.75 * 292 / 3.785, Brining.GramsALitre, 0.5);
    }

    [Fact]
    public void No_limit_is_without_a_source_or_without_a_published_row()
    {
        var rows = PublishedRows.Temperatures.Select(row => row.Id).Concat(PublishedRows.Times.Select(row => row.Id))
            .Concat(PublishedRows.Thawing.Select(row => row.Id)).Concat(PublishedRows.Kill.Select(row => row.Id)).Append("us-cooling").Append("us-brine").ToHashSet();
        var limits = PublishedRows.AllTemperatures.Select(limit => (limit.Id, limit.Source))
            .Concat(PublishedRows.AllTimes.Select(limit => (limit.Id, limit.Source)))
            .Concat(Thawing.All.Select(rule => (rule.Id, rule.Source)))
            .Concat(KillTables.All.Select(table => (table.Id, table.Source)))
            .Append((Brining.InTheFridge.Id, Brining.InTheFridge.Source)).Append((TwoStageCooling.FoodCode.Id, TwoStageCooling.FoodCode.Source)).ToList();
        Assert.Equal(limits.Count, limits.Select(limit => limit.Id).Distinct().Count());
        Assert.All(limits, limit =>
        {
            Assert.Contains(limit.Id, rows);
            Assert.All(new[] { limit.Source.Publisher, limit.Source.Title, limit.Source.Place }, text => Assert.NotEmpty(text));
        });
    }

    [Fact]
    public void Nothing_that_a_region_answers_with_is_missing_from_the_list()
    {
        // Every answer of every question is one of the limits that the test above looks at.
        var known = PublishedRows.AllTemperatures.Select(limit => limit.Id).Concat(PublishedRows.AllTimes.Select(limit => limit.Id)).ToHashSet();
        foreach (var region in Enum.GetValues<Region>())
        {
            Published<Limit>[] heats = [.. Enum.GetValues<Food>().Select(food => CoreLimits.Of(region, food)), Holding.Hot(region), Holding.Reheated(region), Holding.Fridge(region)];
            Published<TimeLimit>[] times = [Holding.Out(region, 20), Holding.Out(region, 35), .. Enum.GetValues<LeftoverKind>().SelectMany(kind => new[] { Leftovers.CoolWithin(region, kind), Leftovers.Keep(region, kind), Freezing.Keep(region, kind) })];
            Assert.All(heats.OfType<Published<Limit>.Is>(), one => Assert.Contains(one.Limit.Id, known));
            Assert.All(times.OfType<Published<TimeLimit>.Is>(), one => Assert.Contains(one.Limit.Id, known));
        }
    }

    [Fact]
    public void The_households_region_chooses_and_nothing_is_averaged()
    {
        // Conflicts as they are published: hot holding 63 (UK) and 60 °C (USDA, homes); rice 1 day (UK) and 4 to 6 (US); leftovers 2 and 3 to 4.
        Assert.Equal(63, Hot(Region.UnitedKingdom));
        Assert.Equal(60, Hot(Region.UnitedStates), 0.01);
        var cooked = new DateTimeOffset(2026, 2, 7, 14, 0, 0, TimeSpan.Zero);
        Assert.Equal(cooked.AddDays(1), Of(Region.UnitedKingdom, LeftoverKind.Rice, cooked).Eat!.By);
        Assert.Equal(cooked.AddDays(4), Of(Region.UnitedStates, LeftoverKind.Rice, cooked).Eat!.By);
        Assert.Equal(cooked.AddDays(2), Of(Region.Scotland, LeftoverKind.MeatPoultryOrFish, cooked).Eat!.By);
        Assert.Equal(cooked.AddDays(3), Of(Region.UnitedStates, LeftoverKind.MeatPoultryOrFish, cooked).Eat!.By);
        Assert.Equal(cooked.AddHours(1), Of(Region.UnitedKingdom, LeftoverKind.Rice, cooked).InFridge!.By);
        // 1 to 2 h (UK): the shorter end.
        Assert.Equal(cooked.AddHours(1), Of(Region.UnitedKingdom, LeftoverKind.Vegetables, cooked).InFridge!.By);
    }

    [Fact]
    public void Where_a_region_has_no_limit_none_is_borrowed()
    {
        Assert.IsType<Published<Limit>.None>(Holding.Hot(Region.Canada));
        Assert.IsType<Published<TimeLimit>.None>(Leftovers.Keep(Region.Canada, LeftoverKind.Rice));
        Assert.IsType<Published<Limit>.None>(CoreLimits.Of(Region.Canada, Food.Stuffing));
        Assert.IsType<Published<TwoStageCooling>.None>(TwoStageCooling.Of(Region.UnitedKingdom));
        Assert.Equal(new LeftoverTimes(null, null, null), Of(Region.Canada, LeftoverKind.Rice, default));
        Assert.Null(Thawing.For(Region.UnitedKingdom, ThawingPlace.ColdWater, 5));
    }

    [Theory]
    [InlineData(Food.WholePoultry)]
    [InlineData(Food.Pork)]
    [InlineData(Food.RolledJoint)]
    [InlineData(Food.GroundMeat)]
    public void Only_whole_cuts_may_be_pink(Food food)
    {
        Assert.False(CoreLimits.PinkInside(Region.UnitedKingdom, food));
        Assert.True(CoreLimits.PinkInside(Region.UnitedKingdom, Food.WholeCut));
    }

    static LeftoverTimes Of(Region region, LeftoverKind kind, DateTimeOffset cooked) => LeftoverTimes.Of(region, [kind], cooked, cooked);

    static double Hot(Region region) => Assert.IsType<Published<Limit>.Is>(Holding.Hot(region)).Limit.Celsius;
}
