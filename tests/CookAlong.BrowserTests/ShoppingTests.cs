using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>One list on two phones in a shop, one of which loses the house's network and finds it again.</summary>
[Collection(Browsers.Name)]
public sealed partial class ShoppingTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task Two_phones_tick_one_list_and_what_was_tapped_away_from_home_is_sent_later()
    {
        await using var host = await house.HostAsync(ScreenSize.Phone);
        var meal = await StartAsync(host);
        await using var ivo = await house.JoinAsync(host, "Ivo");
        await host.GoToAsync($"{meal}/shopping");
        await ivo.GoToAsync($"{meal}/shopping");
        await Expect(Tick(host, "onion")).ToContainTextAsync("3");

        // One ticks, the other sees it.
        await Tick(host, "onion").ClickAsync();
        await Expect(Tick(ivo, "onion")).ToHaveAttributeAsync("aria-pressed", "true");
        await Expect(ivo.Page.Locator(".left")).ToContainTextAsync("3 still to get");

        // Away from home a tick shows at once, waits, and can be taken back; a reload loses none of it.
        await ivo.HoldAsync("navigator.serviceWorker.controller && !!(await caches.match(location.pathname))");
        await ivo.Context.SetOfflineAsync(true);
        await Tick(ivo, "flour").ClickAsync();
        await Tick(ivo, "salt").ClickAsync();
        await Tick(ivo, "salt").ClickAsync();
        await Add(ivo, "candles");
        await Expect(Line(ivo, "flour")).ToHaveAttributeAsync("data-shown", "bought");
        await Expect(Line(ivo, "salt")).ToHaveAttributeAsync("data-shown", "open");
        await Expect(ivo.Page.Locator("#cut-off")).ToContainTextAsync("Go on shopping");
        await Expect(ivo.Page.Locator("#outbox")).ToContainTextAsync("Add: candles");
        await ivo.PictureAsync("shopping-away");
        await ivo.ShouldBeCleanAsync();
        await Expect(ivo.Page.Locator(".left")).ToContainTextAsync("2 still to get");
        // So does what it cost.
        await Expect(ivo.Page.Locator(".spent")).ToBeHiddenAsync();
        await Cost(ivo, "onion").ClickAsync();
        await ivo.Page.GetByLabel("Price").FillAsync("lots");
        await ivo.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(ivo.Page.GetByText("What it cost: onions")).ToBeVisibleAsync();
        await ivo.Page.GetByLabel("Price").FillAsync("2,4");
        await ivo.PictureAsync("shopping-cost");
        await ivo.Page.GetByLabel("Price").PressAsync("Enter");
        await Expect(ivo.Page.GetByText("What it cost: onions")).ToBeHiddenAsync();
        // The household, and with it its currency, is shared with the other tests here.
        await Expect(ivo.Page.Locator(".spent")).ToHaveTextAsync(new Regex("^Spent 2\\.40(\\sNOK)?, 1 bought without a price$"));
        await ivo.Page.ReloadAsync();
        await Expect(Line(ivo, "flour")).ToHaveAttributeAsync("data-shown", "bought");
        await Expect(Line(ivo, "onion").Locator(".price")).ToHaveTextAsync("2.40");
        await Expect(Line(host, "flour")).ToHaveAttributeAsync("data-shown", "open");

        // Meanwhile at home.
        await host.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("At home.*salt") }).ClickAsync();
        await Expect(Line(host, "salt")).ToHaveAttributeAsync("data-state", "cupboard");

        await ivo.Context.SetOfflineAsync(false);
        await Expect(Line(host, "flour")).ToHaveAttributeAsync("data-state", "bought");
        await Expect(host.Page.GetByRole(AriaRole.Button, new() { Name = "candles", Exact = true })).ToBeVisibleAsync();
        await Expect(ivo.Page.Locator("#cut-off")).ToBeHiddenAsync();
        await Expect(ivo.Page.Locator("#outbox")).ToBeHiddenAsync();
        await Expect(ivo.Page.Locator("li[data-waiting]")).ToHaveCountAsync(0);
        await Expect(Line(host, "onion")).ToHaveAttributeAsync("data-price", "2.40");
        await Cost(host, "flour").ClickAsync();
        await host.Page.GetByLabel("Price").FillAsync("0.85");
        await host.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(ivo.Page.Locator(".spent > b")).ToHaveTextAsync("3.25");
        await Expect(ivo.Page.Locator(".unpriced")).ToBeHiddenAsync();
        await host.PictureAsync("shopping-priced");
        await host.ShouldBeCleanAsync();
        await ivo.ShouldBeCleanAsync();
    }

    [Fact]
    public async Task The_demo_s_list_is_scaled_arranged_copied_and_clean_in_every_light()
    {
        await using var host = await house.HostAsync(ScreenSize.Tablet);
        var page = host.Page;
        await host.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        // Chromium here has no sheet to share by: what the device would get is caught. Where it refuses, the text is copied.
        await page.AddInitScriptAsync("navigator.share = (data) => { window.shared = data.text; return Promise.resolve(); }");
        await page.GetByRole(AriaRole.Link, new() { Name = "Midwinter lunch at Alder Lane" }).First.ClickAsync();
        await page.Locator("summary", new() { HasText = "Why" }).ClickAsync();
        await page.EvaluateAsync("addEventListener('resize', () => document.getElementById('who-title').scrollIntoView()); document.getElementById('who-title').scrollIntoView()");
        await host.ShouldBeCleanInEveryLightAsync("who-can-eat");
        await page.GetByRole(AriaRole.Link, new() { Name = "Shopping" }).ClickAsync();
        await Expect(Tick(host, "kale")).ToContainTextAsync("900 g");

        await page.GetByText("For how many").ClickAsync();
        for (var portions = 10; portions <= 12; portions++)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "more of Kale with lemon" }).ClickAsync();
            await Expect(page.Locator("#portions li", new() { HasText = "Kale with lemon" }).Locator("b")).ToHaveTextAsync($"{portions}");
        }

        await Expect(Tick(host, "kale")).ToContainTextAsync("1.2 kg");

        await page.GetByText("Arrange the aisles").ClickAsync();
        await Expect(page.Locator("main h2").First).ToHaveTextAsync("Vegetables, fruit and herbs");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Up.*Bread") }).ClickAsync();
        await Expect(page.Locator("main h2").First).ToHaveTextAsync("Bread");
        await page.EvaluateAsync("scrollTo(0, 0)");
        await host.ShouldBeCleanInEveryLightAsync("shopping");

        // Away from home the order changes at once, tap by tap; all of it counts later.
        await host.Context.SetOfflineAsync(true);
        var eggs = page.GetByRole(AriaRole.Button, new() { NameRegex = new("Up.*Milk, cheese and eggs") });
        await eggs.ClickAsync();
        await eggs.ClickAsync();
        await Expect(page.Locator("#aisles .what").Nth(1)).ToHaveTextAsync("Milk, cheese and eggs");
        await host.Context.SetOfflineAsync(false);
        await Expect(page.Locator("#outbox")).ToBeHiddenAsync();
        await Expect(page.Locator("main h2").Nth(1)).ToHaveTextAsync("Milk, cheese and eggs");
        await Expect(page.Locator("#aisles .what").Nth(1)).ToHaveTextAsync("Milk, cheese and eggs");

        await page.GetByRole(AriaRole.Button, new() { Name = "Copy as text" }).ClickAsync();
        await Expect(page.Locator("#said")).ToContainTextAsync("copied");
        var copied = await page.EvaluateAsync<string>("navigator.clipboard.readText()");
        Assert.StartsWith("Shopping for Midwinter lunch at Alder Lane", copied, StringComparison.Ordinal);
        Assert.Contains("\n\nBread\n- ", copied, StringComparison.Ordinal);
        Assert.Contains("\n- kale, 1.2 kg\n", copied, StringComparison.Ordinal);
        Assert.DoesNotContain("Spent", copied, StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "Share" }).ClickAsync();
        Assert.Equal(copied, await page.EvaluateAsync<string>("shared"));
        await page.EvaluateAsync("() => { navigator.share = () => Promise.reject(new DOMException('', 'NotAllowedError')); return navigator.clipboard.writeText(''); }");
        await page.GetByRole(AriaRole.Button, new() { Name = "Share" }).ClickAsync();
        await host.HoldAsync("navigator.clipboard.readText().then((text) => text.startsWith('Shopping for'))");

        // Once something is bought and priced, the text leaves it out and tells the total; so does the paper.
        await page.GetByText("Currency", new() { Exact = true }).ClickAsync();
        await page.GetByLabel("Three letters by ISO 4217").FillAsync("nok");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set", Exact = true }).ClickAsync();
        await Tick(host, "kale").ClickAsync();
        await Cost(host, "kale").ClickAsync();
        await page.GetByLabel("Price").FillAsync("61.5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#outbox")).ToBeHiddenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Copy as text" }).ClickAsync();
        await host.HoldAsync("navigator.clipboard.readText().then((text) => text.endsWith('Spent 61.50 NOK'))");
        Assert.DoesNotContain("kale, 1.2 kg", await page.EvaluateAsync<string>("navigator.clipboard.readText()"), StringComparison.Ordinal);

        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Copy as text" })).ToBeHiddenAsync();
        await Expect(page.Locator(".spent")).ToBeVisibleAsync();
        await host.PictureAsync("shopping-paper");
    }

    [Fact]
    public async Task A_list_from_before_a_tick_takes_nothing_back_and_a_phone_that_is_put_out_keeps_no_copy()
    {
        await using var host = await house.HostAsync(ScreenSize.Phone);
        var meal = await StartAsync(host);
        await using var ivo = await house.JoinAsync(host, "Ivo");
        await host.GoToAsync($"{meal}/shopping");
        await ivo.GoToAsync($"{meal}/shopping");
        await Expect(ivo.Page.Locator("#aisles")).ToHaveCountAsync(0);
        await ivo.HoldAsync("!!(await caches.match(location.pathname))");
        Assert.Equal(["/meals/"], await ivo.Page.EvaluateAsync<string[]>(
            "async () => (await navigator.serviceWorker.getRegistrations()).map((one) => new URL(one.scope).pathname).filter((path) => path.startsWith('/meals/'))"));

        // The host's tick is on its way to the phone when the phone's own is made.
        await ivo.Page.EvaluateAsync(
            """
            () => {
              const line = document.querySelector("li[data-key=onion]"), ask = fetch;
              window.shown = [];
              new MutationObserver(() => window.shown.push(line.dataset.shown)).observe(line, { attributes: true });
              // In the page, since past a worker a route does not see every request.
              globalThis.fetch = async (what, how) => {
                const answer = await ask(what, how);
                if (String(what).endsWith("/shopping/part") && answer.status === 200 && !window.arrive) await new Promise((go) => { window.arrive = go; });
                return answer;
              };
            }
            """);
        await Tick(host, "flour").ClickAsync();
        await ivo.HoldAsync("!!window.arrive");
        await ivo.Page.RunAndWaitForResponseAsync(() => Tick(ivo, "onion").ClickAsync(), "**/shopping/taps");
        await Expect(ivo.Page.Locator("#outbox")).ToBeHiddenAsync();
        await ivo.Page.EvaluateAsync("() => window.arrive()");
        await Expect(Line(ivo, "flour")).ToHaveAttributeAsync("data-state", "bought");
        await Expect(Line(ivo, "onion")).ToHaveAttributeAsync("data-state", "bought");
        Assert.DoesNotContain("open", await ivo.Page.EvaluateAsync<string[]>("window.shown.slice(window.shown.indexOf('bought'))"));

        // Its session ends; the next news is refused.
        await ivo.Context.ClearCookiesAsync();
        await Tick(host, "salt").ClickAsync();
        await Expect(ivo.Page.GetByText("This list is for the host")).ToBeVisibleAsync();
        await ivo.HoldAsync("caches.has('cookalong-kept').then((has) => !has)");
    }

    static ILocator Line(Screen screen, string key) => screen.Page.Locator($"li[data-key='{key}']");

    static ILocator Tick(Screen screen, string key) => Line(screen, key).Locator(".tick");

    static ILocator Cost(Screen screen, string key) => Line(screen, key).Locator("[data-cost]");

    static async Task Add(Screen screen, string text)
    {
        await screen.Page.GetByLabel("Something else to buy").FillAsync(text);
        await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).ClickAsync();
    }

    /// <summary>The soup with a few ingredients, being cooked. Ends at the board.</summary>
    /// <returns>The meal's address.</returns>
    static async Task<string> StartAsync(Screen host)
    {
        var soup = JsonNode.Parse(SoupForSix.Json("Soup to shop for", TimeProvider.System.GetUtcNow()))!;
        soup["dishes"]![0]!["ingredients"] = JsonNode.Parse("""[{ "name": "celeriac", "quantity": 1 }, { "name": "onions", "quantity": 2 }, { "name": "salt" }]""");
        soup["dishes"]![3]!["ingredients"] = JsonNode.Parse("""[{ "name": "onion", "quantity": 1 }, { "name": "flour", "quantity": 0.5, "unit": "kg" }]""");
        foreach (var dish in soup["dishes"]!.AsArray())
        {
            // For as many as come, so that nothing is scaled.
            dish!["serves"] = 1;
        }

        await Household.PlanAsync(host, soup.ToJsonString());
        var meal = MealAddress().Match(host.Page.Url).Value;
        await host.Page.GetByRole(AriaRole.Button, new() { Name = "Start cooking" }).ClickAsync();
        await host.Page.WaitForURLAsync(new Regex("/cook/[0-9a-f-]{36}$"));
        return meal;
    }

    [GeneratedRegex("/meals/[0-9a-f-]{36}")]
    private static partial Regex MealAddress();
}
