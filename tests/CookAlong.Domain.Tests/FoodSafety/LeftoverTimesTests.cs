using CookAlong.Domain.FoodSafety;

namespace CookAlong.Domain.Tests.FoodSafety;

public sealed class LeftoverTimesTests
{
    static readonly DateTimeOffset Noon = new(2026, 2, 7, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_strictest_limit_of_all_that_a_dish_holds_counts()
    {
        // USDA: cooked rice 4 to 6 days (FoodKeeper), cooked poultry 3 to 4 (Cold Food Storage Chart); UK home advice: 2 days, cooked rice 1 and cold within the hour.
        LeftoverKind[] biryani = [LeftoverKind.Rice, LeftoverKind.MeatPoultryOrFish];
        Assert.Equal(Noon.AddDays(3), LeftoverTimes.Of(Region.UnitedStates, biryani, Noon, Noon).Eat!.By);
        var kingdom = LeftoverTimes.Of(Region.UnitedKingdom, biryani, Noon, Noon);
        Assert.Equal(("uk-keep-rice", Noon.AddDays(1)), (kingdom.Eat!.Limit.Id, kingdom.Eat.By));
        Assert.Equal(Noon.AddHours(1), kingdom.InFridge!.By);
    }

    [Fact]
    public void What_was_made_ahead_keeps_from_its_cooking_and_cools_from_its_warming()
    {
        // Home advice of the UK: 2 days, in the fridge within 1 to 2 h, of which the shorter counts.
        var times = LeftoverTimes.Of(Region.UnitedKingdom, [LeftoverKind.Vegetables], Noon.AddDays(-1), Noon);
        Assert.Equal((Noon.AddDays(1), Noon.AddHours(1)), (times.Eat!.By, times.InFridge!.By));
    }

    [Fact]
    public void What_does_not_freeze_well_has_no_frozen_date()
    {
        // Cold Food Storage Chart: salads do not freeze well.
        Assert.Null(LeftoverTimes.Of(Region.UnitedStates, [LeftoverKind.MeatPoultryOrFish, LeftoverKind.Salad], Noon, Noon).Freeze);
        Assert.Equal(Noon.AddDays(60), LeftoverTimes.Of(Region.UnitedStates, [LeftoverKind.MeatPoultryOrFish], Noon, Noon).Freeze!.By);
    }

    [Fact]
    public void A_region_without_limits_has_no_times() =>
        Assert.Equal(new LeftoverTimes(null, null, null), LeftoverTimes.Of(Region.Canada, [LeftoverKind.Rice], Noon, Noon));
}
