using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>A duck that is done when the thermometer says so, read on the tablet and on a phone.</summary>
[Collection(Browsers.Name)]
public sealed class CoreTests(Household house, Chromium chromium) : IClassFixture<Household>
{
    [Fact]
    public async Task The_duck_is_not_done_before_its_thermometer_says_so()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartAsync(tablet, Duck(TimeProvider.System.GetUtcNow()));
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await BeginAsync(tablet, "duck-roast");

        var duck = ivo.Page.Locator("#core-duck-roast");
        await Expect(duck).ToContainTextAsync("It is done at 74 °C");
        await duck.GetByLabel("Thermometer").FillAsync("8.5");
        await duck.GetByRole(AriaRole.Button, new() { Name = "Note it" }).ClickAsync();
        await Expect(duck).ToContainTextAsync("8.5 °C in the middle");
        await ivo.ShouldBeCleanInEveryLightAsync("core");

        // The tablet shows the same, and says why it is not done.
        var tray = tablet.Page.Locator("#hot-duck-roast");
        await Expect(tray).ToContainTextAsync("8.5 °C of 74 °C inside");
        await tray.Locator("summary").First.ClickAsync();
        await tray.GetByRole(AriaRole.Button, new() { Name = "Out now" }).ClickAsync();
        await Expect(tablet.Page.Locator("#said")).ToContainTextAsync("Not safe yet");
        await tablet.ShouldBeCleanInEveryLightAsync("core-board");

        // The host vouches for another check, which lets it out.
        await tray.Locator("summary").First.ClickAsync();
        await tray.GetByText("No thermometer?").ClickAsync();
        await tray.GetByLabel("What you looked at").FillAsync("The neighbour's thermometer: 78 °C in the thigh");
        await tray.GetByRole(AriaRole.Button, new() { Name = "I vouch for it" }).ClickAsync();
        await Expect(tray).ToContainTextAsync("The host vouches for it");
        await tray.GetByRole(AriaRole.Button, new() { Name = "Out now" }).ClickAsync();
        await Expect(tray).ToHaveCountAsync(0);
        await Expect(ivo.Page.Locator("#core-duck-roast")).ToHaveCountAsync(0);
        Assert.Empty(tablet.Complaints);
    }

    [Fact]
    public async Task What_a_thermometer_in_the_oven_shows_is_typed_at_the_oven_in_either_scale()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium, Duck, DuckPlan);
        await BeginAsync(kitchen.Tablet, "duck-roast");
        await kitchen.GoToAsync(12, 40);
        var oven = kitchen.Tablet.Page.Locator(".in-oven");
        await oven.Locator("summary").ClickAsync();
        await oven.GetByLabel("Oven thermometer").FillAsync("338");
        await oven.Locator("select").SelectOptionAsync("fahrenheit");
        await kitchen.Tablet.ShouldBeCleanInEveryLightAsync("oven-thermometer");
        await oven.GetByRole(AriaRole.Button, new() { Name = "Note it" }).ClickAsync();
        await Expect(oven.Locator("summary")).ToHaveTextAsync("170 °C inside");
        await oven.GetByRole(AriaRole.Button, new() { Name = "Take back the last" }).ClickAsync();
        await Expect(oven.Locator("summary")).ToHaveTextAsync("Thermometer");
        Assert.Empty(kitchen.Tablet.Complaints);
    }

    [Fact]
    public async Task How_it_rests_is_said_while_it_roasts_and_once_it_is_out()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium, Duck, DuckPlan);
        await using var host = await kitchen.HostPhoneAsync();
        await BeginAsync(kitchen.Tablet, "duck-roast");
        var duck = host.Page.Locator("#core-duck-roast");
        foreach (var (hour, minute, celsius) in new[] { (12, 20, "10"), (12, 40, "22"), (13, 0, "38"), (13, 20, "54") })
        {
            await kitchen.GoToAsync(hour, minute);
            await duck.GetByLabel("Thermometer").FillAsync(celsius);
            await duck.GetByRole(AriaRole.Button, new() { Name = "Note it" }).ClickAsync();
            await Expect(duck).ToContainTextAsync($"{celsius} °C in the middle");
        }

        await Expect(duck).ToContainTextAsync("Under foil, in a kitchen of 22 °C");
        await duck.GetByText("Rests under foil").ClickAsync();
        await duck.GetByRole(AriaRole.Button, new() { Name = "Foil and cloths" }).ClickAsync();
        await Expect(duck).ToContainTextAsync("Under foil and cloths, in a kitchen of 22 °C");
        await duck.GetByLabel("Kitchen, °C").FillAsync("14");
        await duck.GetByRole(AriaRole.Button, new() { Name = "Note the kitchen" }).ClickAsync();
        await Expect(duck).ToContainTextAsync("Under foil and cloths, in a kitchen of 14 °C");
        await host.ShouldBeCleanInEveryLightAsync("cover");

        await kitchen.GoToAsync(14, 0);
        await duck.GetByLabel("Thermometer").FillAsync("75");
        await duck.GetByRole(AriaRole.Button, new() { Name = "Note it" }).ClickAsync();
        await Expect(duck).ToContainTextAsync("Done there");
        var tray = kitchen.Tablet.Page.Locator("#hot-duck-roast");
        await tray.Locator("summary").First.ClickAsync();
        await tray.GetByRole(AriaRole.Button, new() { Name = "Out now" }).ClickAsync();
        var resting = host.Page.Locator("section", new() { Has = host.Page.GetByRole(AriaRole.Heading, new() { Name = "Roast duck, out until" }) });
        await Expect(resting).ToContainTextAsync("hot until about");
        // What was opened before it came out stays open.
        await Expect(resting.Locator("details")).ToHaveAttributeAsync("open", "");
        await resting.GetByRole(AriaRole.Button, new() { Name = "Nothing" }).ClickAsync();
        await Expect(resting).ToContainTextAsync("Rests uncovered, kitchen 14 °C");
        await host.ShouldBeCleanInEveryLightAsync("resting");
        await Expect(kitchen.Tablet.Page.Locator("#cover-duck-roast")).ToContainTextAsync("Rests uncovered, kitchen 14 °C");
        await kitchen.Tablet.ShouldBeCleanInEveryLightAsync("resting-board");
        Assert.Empty(host.Complaints);
    }

    static Plan DuckPlan(Meal meal)
    {
        var (course, oven, at) = (meal.Courses[0], meal.Kitchen.Ovens[0].Id, ClockedKitchen.At(12, 0));
        return new Plan(
            PlanStatus.Optimal, 0, 1, at, [new PlannedCourse(course.Id, course.TableTime, course.TableTime)],
            [new PlannedStep(new StepId("duck-roast"), at, at + 120, -1, [], oven, null, [], 0)], [],
            [new PlannedHold(new DishId("duck"), 0, HoldPlace.Covered, at + 120, course.TableTime, null)],
            [new OvenProgramme(oven, [new OvenPoint(at, 180)], [])], new PlanCost(0, 0, 135, 0, 0), null, []);
    }

    /// <summary>Its tray is in, whatever the plan's minute is by now.</summary>
    static async Task BeginAsync(Screen screen, string step) => await screen.Page.EvaluateAsync(
        """
        step => {
          const run = document.getElementById("live").dataset.run;
          const body = JSON.stringify({ runId: run, commandId: crypto.randomUUID(), saw: 0, command: { kind: "startStep", step } });
          return fetch(`/cook/${run}/taps`, { method: "POST", headers: { "Content-Type": "application/json" }, body });
        }
        """,
        step);

    static string Duck(DateTimeOffset now) => string.Create(CultureInfo.InvariantCulture, $$$"""
        {
          "format": "cookalong-meal/1", "name": "Duck on a Sunday", "timeZone": "UTC", "notBefore": "{{{now:yyyy-MM-dd'T'HH:mm}}}",
          "courses": [{"id": "main", "name": "Duck", "tableTime": "{{{now.AddMinutes(135):yyyy-MM-dd'T'HH:mm}}}"}],
          "kitchen": {"ovens": [{"id": "oven", "name": "The oven", "shelves": 2, "minCelsius": 50, "maxCelsius": 250, "heatUpPerMinute": 100, "coolDownPerMinute": 100}], "rings": 2},
          "helpers": [{"id": "maren", "name": "Maren"}, {"id": "ivo", "name": "Ivo"}],
          "dishes": [{"id": "duck", "name": "Roast duck", "course": "main", "serves": 4,
            "holds": [{"place": "covered", "bestWithin": 5, "goodFor": 10, "limit": 15}],
            "steps": [{"id": "duck-roast", "text": "Roast the duck", "minutes": 120, "attention": "unattended",
              "uses": [{"oven": {"shelves": 1, "celsius": {"min": 175, "ideal": 180, "max": 185} } }],
              "core": {"celsius": 74, "cut": "wholeDuck", "kilograms": 2}}]}]
        }
        """);
}
