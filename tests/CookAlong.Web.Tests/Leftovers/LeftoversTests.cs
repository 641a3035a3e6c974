using System.Net;
using AngleSharp.Html.Parser;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Leftovers;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Leftovers;

/// <summary>Leftovers of a meal that was cooked, with the real server and its file.</summary>
public sealed class LeftoversTests
{
    static readonly string Path = $"/meals/{LiveKitchen.MealRow}/leftovers";

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>The goose came out at 14:10, and two portions of it are left.</summary>
    static async Task<LiveKitchen> CookedAsync()
    {
        var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.House.Get<HouseholdRegion>().ChooseAsync(Region.UnitedKingdom, Stop);
        foreach (var (step, hour, minute) in new[] { ("stuff", 12, 40), ("roast", 14, 10) })
        {
            kitchen.House.Clock.LeapTo(SmallMeal.Clock(hour, minute));
            Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step })).Accepted);
        }

        await kitchen.House.Get<LeftoverBook>().AddPortionsAsync(LiveKitchen.MealRow, new("goose"), 2, Stop);
        return kitchen;
    }

    static async Task<DishLeft> GooseAsync(LiveKitchen kitchen) =>
        (await kitchen.House.Get<LeftoverBook>().OfAsync(LiveKitchen.MealRow, Stop))!.Dishes.Single(left => left.Dish.Id.Value == "goose");

    [Fact]
    public async Task A_dish_left_the_heat_when_its_roasting_was_ticked_off()
    {
        await using var kitchen = await CookedAsync();
        var goose = await GooseAsync(kitchen);
        Assert.Equal((HeatKnown.FromTheRun, SmallMeal.Clock(14, 10)), (goose.Known, goose.Hot.OffTheHeat));
        // UK home advice: in the fridge within 1 to 2 h, of which the shorter counts.
        Assert.Equal(SmallMeal.Clock(15, 10), goose.Times.InFridge!.By);
    }

    [Fact]
    public async Task A_dish_that_was_left_out_is_not_left_over()
    {
        await using var kitchen = await CookedAsync();
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "dropDish", dish = "beans" })).Accepted);
        var kept = (await kitchen.House.Get<LeftoverBook>().OfAsync(LiveKitchen.MealRow, Stop))!;
        Assert.DoesNotContain(kept.Dishes, left => left.Dish.Id.Value == "beans");
    }

    [Fact]
    public async Task Each_portion_has_a_label_with_its_dish_days_and_allergens()
    {
        await using var kitchen = await CookedAsync();
        var page = new HtmlParser().ParseDocument(await kitchen.Host.ReadAsync($"{Path}/labels"));
        var labels = page.QuerySelectorAll(".sheet-of-labels li").Select(label => string.Join(' ', label.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))).ToList();
        Assert.Equal(
            ["goose 1 of 2, cooked Sun 20 Dec Eat by Tue 22 Dec 14:10 Frozen: best until Sat 20 Mar Allergens: ask the cook", "goose 2 of 2, cooked Sun 20 Dec Eat by Tue 22 Dec 14:10 Frozen: best until Sat 20 Mar Allergens: ask the cook"],
            labels);
    }

    [Fact]
    public async Task The_reminders_ring_before_the_fridge_and_before_the_last_hour()
    {
        await using var kitchen = await CookedAsync();
        var text = await kitchen.Host.ReadAsync($"{Path}/reminders.ics");
        Assert.Contains("SUMMARY:Into the fridge: goose\\, 2 portions", text, StringComparison.Ordinal);
        Assert.Contains("DTSTART:20261220T151000Z", text, StringComparison.Ordinal);
        Assert.Contains("TRIGGER:-PT30M", text, StringComparison.Ordinal);
        Assert.Contains("DTSTART:20261222T141000Z", text, StringComparison.Ordinal);
        Assert.Equal(2, text.Split("BEGIN:VEVENT").Length - 1);
    }

    [Fact]
    public async Task The_way_there_is_on_the_page_after_the_end_and_only_for_hosts()
    {
        await using var kitchen = await CookedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" })).Accepted);
        Assert.Contains($"/cook/{kitchen.Run}/leftovers", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}"), StringComparison.Ordinal);
        using var way = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}/leftovers");
        Assert.Equal(Path, way.Headers.Location!.OriginalString);
        using var no = await ivo.GetAsync($"{Path}/labels");
        Assert.Equal(HttpStatusCode.Forbidden, no.StatusCode);
    }

    [Fact]
    public async Task Leftovers_go_with_their_meal()
    {
        await using var kitchen = await CookedAsync();
        await kitchen.House.Get<MealBook>().DeleteAsync(LiveKitchen.MealRow, Stop);
        await using var db = kitchen.House.NewDb();
        Assert.Empty(await db.Set<LeftoverRow>().ToListAsync(Stop));
        using var gone = await kitchen.Host.GetAsync($"{Path}/labels");
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
    }
}
