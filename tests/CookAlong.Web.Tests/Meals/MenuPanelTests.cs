using Bunit;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Meals;

public sealed class MenuPanelTests : BunitContext
{
    public MenuPanelTests() => Services.AddSingleton<TimeProvider>(new FakeTimeProvider());

    // By hand: both bakes may not wait, so the hour before 18:00 is wanted twice on one shelf, and 200 is not 150.
    const string TwoBakes =
        """
        {
          "format": "cookalong-meal/1", "name": "Two bakes", "timeZone": "UTC", "notBefore": "2031-02-08T12:00",
          "courses": [{"id": "main", "name": "Main", "tableTime": "2031-02-08T18:00"}],
          "guests": [{"name": "Pilar", "diets": ["vegetarian"]}],
          "kitchen": {"ovens": [{"id": "oven", "name": "Oven", "shelves": 1, "minCelsius": 50, "maxCelsius": 250, "heatUpPerMinute": 12, "coolDownPerMinute": 10}], "rings": 4},
          "helpers": [{"id": "maren", "name": "Maren"}],
          "dishes": [
            {"id": "loaf", "name": "Lentil loaf", "course": "main", "serves": 4, "ingredients": [{"name": "lentils", "quantity": 800, "unit": "g"}],
             "holds": [{"place": "table", "bestWithin": 1, "goodFor": 2, "limit": 3}],
             "steps": [{"id": "loaf-bake", "text": "Bake the loaf", "minutes": 60, "attention": "unattended", "uses": [{"oven": {"shelves": 1, "celsius": {"min": 190, "max": 210}}}]}]},
            {"id": "ham", "name": "Ham", "course": "main", "serves": 4, "ingredients": [{"name": "ham", "quantity": 800, "unit": "g"}],
             "holds": [{"place": "table", "bestWithin": 1, "goodFor": 2, "limit": 3}],
             "steps": [{"id": "ham-bake", "text": "Bake the ham", "minutes": 65, "attention": "unattended", "uses": [{"oven": {"shelves": 1, "celsius": {"min": 140, "max": 160}}}]}]}
          ]
        }
        """;

    static Meal Meal => MealFile.Read(TwoBakes).Meal!;

    [Fact]
    public void A_menu_that_no_plan_can_serve_on_time_says_so_before_any_planning()
    {
        var panel = Render<MenuPanel>(parameters => parameters.Add(one => one.Meal, Meal));
        var oven = panel.Find(".rooms li");
        Assert.Contains("2 h 5 min wanted of 2 h", oven.TextContent, StringComparison.Ordinal);
        Assert.Contains("2 h 5 min of it cannot lie earlier: with this menu nothing is on time.", oven.TextContent, StringComparison.Ordinal);
        Assert.Contains("Lentil loaf at 190 to 210 °C and Ham at 140 to 160 °C want the oven together for 1 h,", panel.Find("section").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_would_ease_it_is_told_with_who_would_miss_it_and_made_at_a_touch()
    {
        PlanChange? made = null;
        var panel = Render<MenuPanel>(parameters => parameters.Add(one => one.Meal, Meal).Add(one => one.Make, change => made = change));
        await panel.Find("button").ClickAsync(new());
        panel.WaitForAssertion(() => Assert.False(panel.Find("button").HasAttribute("disabled")), TimeSpan.FromSeconds(30));

        var offers = panel.FindAll(".offers li");
        var loaf = offers.Single(offer => offer.TextContent.StartsWith("Leave out Lentil loaf", StringComparison.Ordinal));
        Assert.Contains("then there is a plan", loaf.TextContent, StringComparison.Ordinal);
        Assert.Contains("no main dish for Pilar", loaf.TextContent, StringComparison.Ordinal);
        var oven = offers.Single(offer => offer.TextContent.StartsWith("Borrow a second oven", StringComparison.Ordinal));
        await oven.QuerySelector("button")!.ClickAsync(new());
        Assert.IsType<PlanChange.AddOven>(made);
    }
}
