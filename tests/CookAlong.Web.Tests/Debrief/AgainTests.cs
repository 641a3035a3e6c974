using CookAlong.Domain.Debrief;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief.Again;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Live;

namespace CookAlong.Web.Tests.Debrief;

public sealed class AgainTests
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_said_and_what_came_back_of_the_last_time_is_something_to_do_and_can_be_ticked_off()
    {
        await using var lunch = await CookedLunch.CookAsync();
        await lunch.PostAsync("notes", new() { ["verdict-goose"] = "less", ["note-"] = "Begin earlier. Borrow a big pan!" });
        var meal = (await lunch.Kitchen.House.Get<MealBook>().OpenAsync(LiveKitchen.MealRow, Stop))!.Meal;
        await using (var db = lunch.Kitchen.House.NewDb())
        {
            db.Add(new LeftoverRow { Meal = LiveKitchen.MealRow, Dish = "goose", Portions = (int)Math.Ceiling(meal.Dishes[0].Serves / 3) });
            await db.SaveChangesAsync(Stop);
        }

        var last = lunch.Kitchen.House.Get<LastTimes>();
        await last.TickAsync(LiveKitchen.MealRow, "Borrow a big pan", isSeenTo: true, Stop);

        var seen = await last.OfAsync(LiveKitchen.MealRow, meal, Stop);
        Assert.Contains("came back", seen.Dishes.Single(dish => dish.Verdict == "less").CameBack, StringComparison.Ordinal);
        Assert.Equal(("Begin earlier", false), seen.Differently[0]);
        Assert.Equal(("Borrow a big pan", true), seen.Differently[1]);
        Assert.StartsWith("Make less of ", seen.Differently[2].Item, StringComparison.Ordinal);

        await last.TickAsync(LiveKitchen.MealRow, "Borrow a big pan", isSeenTo: false, Stop);
        Assert.All((await last.OfAsync(LiveKitchen.MealRow, meal, Stop)).Differently, one => Assert.False(one.IsSeenTo));
    }

    [Fact]
    public async Task A_dish_that_was_cooked_in_another_meal_brings_along_what_was_said_of_it()
    {
        await using var app = new AppFactory { HasEarlierMeals = true };
        await app.HostAsync();
        var midwinter = (await app.Get<MealBook>().AllAsync(Stop)).Single(meal => meal.Row.Name.StartsWith("Midwinter", StringComparison.Ordinal));

        var seen = await app.Get<LastTimes>().OfAsync(midwinter.Row.Id, midwinter.Meal, Stop);

        var cabbage = seen.Dishes.Single(dish => dish.Dish == "Braised red cabbage");
        Assert.Equal(("Autumn supper at Alder Lane", "less", "a third of it came back"), (cabbage.In, cabbage.Verdict, cabbage.CameBack));
        Assert.Contains(seen.Differently, one => one.Item == "Make less of Braised red cabbage: a third of it came back");
    }

    [Fact]
    public async Task The_goose_is_ordered_two_weeks_before_and_what_is_begun_ahead_rings_the_evening_before()
    {
        await using var app = new AppFactory();
        var host = await app.HostAsync();
        var midwinter = (await app.Get<MealBook>().AllAsync(Stop)).Single(meal => meal.Row.Name.StartsWith("Midwinter", StringComparison.Ordinal));
        await app.Get<MealBook>().EditAsync(midwinter, edit => edit.MoveTo(new DateOnly(2027, 12, 19)), fromNow: false, Stop);

        // Long lines are folded with a line break and a space (RFC 5545, 3.1).
        var file = (await host.ReadAsync($"/meals/{midwinter.Row.Id}/reminders.ics")).Replace("\r\n ", "", StringComparison.Ordinal);

        // 10 o'clock in Berlin in winter.
        Assert.Matches(@"DTSTART:20271205T090000Z[\s\S]{0,400}SUMMARY:Order goose", file.Replace("DTSTART;TZID=UTC:", "DTSTART:", StringComparison.Ordinal));
        Assert.Contains("Unwrap the goose and pat it dry", file, StringComparison.Ordinal);
        Assert.Contains("TRIGGER:-PT12H", file.Replace("-PT720M", "-PT12H", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("Carve the goose", file, StringComparison.Ordinal);
    }
}
