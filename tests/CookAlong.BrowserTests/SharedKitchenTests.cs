using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Many hands on one board: what each may still do when others have moved on, left or ended it.</summary>
[Collection(Browsers.Name)]
public sealed class SharedKitchenTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_guest_put_out_by_the_host_is_out_at_once()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        var run = new Uri(tablet.Page.Url).AbsolutePath;
        await ivo.GoToAsync("about:blank");
        var socket = await ivo.Page.RunAndWaitForWebSocketAsync(() => ivo.GoToAsync($"{run}/me"));
        await Expect(Button(ivo, "Start")).ToBeVisibleAsync();

        await tablet.GoToAsync($"{run}/invite");
        await Button(tablet, "Put out Ivo").ClickAsync();
        await Expect(tablet.Page.GetByRole(AriaRole.Status)).ToContainTextAsync("Ivo is out");
        await tablet.ShouldBeCleanAsync();

        // Within seconds the phone says so, has nothing left to tap and no line to the kitchen.
        await Expect(ivo.Page.GetByRole(AriaRole.Heading, new() { Name = "You are not in the kitchen" })).ToBeVisibleAsync(new() { Timeout = 10_000 });
        await Expect(ivo.Page.Locator("[data-tap]")).ToHaveCountAsync(0);
        await Expect(ivo.Page.Locator("#cut-off")).ToBeHiddenAsync();
        Assert.True(await ClosesAsync(socket));

        await ivo.PictureAsync("put-out");
        await ivo.ShouldBeCleanAsync();

        // Whatever it kept of the page opens nothing any more.
        Assert.False(await TapAsync(ivo, run, "startStep", "chop"));
        await Expect(Card(tablet, "chop")).ToHaveCountAsync(0);
        await ivo.GoToAsync($"{run}/me");
        Assert.DoesNotContain("/cook/", new Uri(ivo.Page.Url).AbsolutePath, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_somebody_has_opened_stays_open_when_others_tap()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await using var tobi = await house.JoinAsync(tablet, "Tobi");
        await Button(ivo, "Start").ClickAsync();
        await Button(ivo, "Done").ClickAsync();
        await ivo.Page.Locator("#done summary").ClickAsync();
        await tablet.Page.Locator("#more-knead summary").ClickAsync();

        await Button(tobi, "Start").ClickAsync();

        await Expect(Card(tablet, "wash")).ToContainTextAsync("left");
        await Expect(tablet.Page.Locator("#more-knead[open] .menu")).ToBeVisibleAsync();
        await Expect(ivo.Page.Locator("#part")).ToHaveAttributeAsync("data-sequence", await tablet.Page.Locator("#part").GetAttributeAsync("data-sequence") ?? "");
        await Expect(ivo.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Take back.*Chop") })).ToBeVisibleAsync();
        await tablet.PictureAsync("menu");
        await tablet.ShouldBeCleanAsync();
        await ivo.ShouldBeCleanAsync();
    }

    // The button under the finger turns from "I have it" into Start; the second half of a double tap must not find it.
    [Fact]
    public async Task A_double_tap_does_one_thing()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await Expect(Card(tablet, "simmer").GetByRole(AriaRole.Button, new() { Name = "I have it" })).ToBeVisibleAsync();

        var underTheFinger = await tablet.Page.EvaluateAsync<string>("""
            () => new Promise(found => {
              const main = () => document.querySelector("#card-simmer button.main");
              const look = () => {
                if (main().textContent.trim() !== "Start") return;
                const { x, y, width, height } = main().getBoundingClientRect();
                found(document.elementFromPoint(x + width / 2, y + height / 2)?.closest("[data-tap]")?.dataset.tap ?? "nothing");
              };
              new MutationObserver(look).observe(document.getElementById("live"), { subtree: true, childList: true, characterData: true });
              main().click();
              main().click();
            })
            """);

        Assert.Equal("nothing", underTheFinger);
        await Expect(tablet.Page.Locator("#said")).ToBeEmptyAsync();

        // Once the finger has had time to see it, it is a button again.
        await Card(tablet, "simmer").GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).ClickAsync();
        await Expect(Card(tablet, "simmer")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_tap_on_a_page_that_is_behind_is_refused_in_words()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await Button(ivo, "Start").ClickAsync();
        await Expect(Button(ivo, "+ 5 min")).ToBeVisibleAsync();
        await StandStillAsync(ivo);

        await Card(tablet, "chop").GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Expect(Card(tablet, "chop")).ToHaveCountAsync(0);
        await Button(ivo, "+ 5 min").ClickAsync();

        await Expect(ivo.Page.Locator("#said")).ToContainTextAsync("“Chop the vegetables” was done at");
        await ivo.PictureAsync("refused");
        await ivo.ShouldBeCleanAsync();
    }

    [Fact]
    public async Task A_job_that_somebody_took_first_is_refused_in_words()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await using var runa = await house.JoinAsync(tablet, "Runa");
        await Button(ivo, "Let go").ClickAsync();
        var take = new PageGetByRoleOptions { NameRegex = new(@"I’ll take it\s*: Chop") };
        await Expect(ivo.Page.GetByRole(AriaRole.Button, take)).ToBeVisibleAsync();
        await StandStillAsync(ivo);

        await runa.Page.GetByRole(AriaRole.Button, take).ClickAsync();
        await Expect(runa.Page.Locator("article.job")).ToContainTextAsync("Chop the vegetables");
        await ivo.Page.GetByRole(AriaRole.Button, take).ClickAsync();

        await Expect(ivo.Page.Locator("#said")).ToContainTextAsync("Runa took “Chop the vegetables” first");
    }

    [Fact]
    public async Task A_tap_after_the_end_is_refused_in_words()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await Expect(Button(ivo, "Start")).ToBeVisibleAsync();
        await StandStillAsync(ivo);

        await tablet.Page.Locator("#end-early summary").ClickAsync();
        await tablet.PictureAsync("end-early");
        await tablet.ShouldBeCleanAsync();
        await Button(tablet, "End the meal now").ClickAsync();
        await Expect(tablet.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("is over");
        await Button(ivo, "Start").ClickAsync();

        await Expect(ivo.Page.Locator("#said")).ToContainTextAsync("The meal is over");
        await tablet.PictureAsync("over");
        await tablet.ShouldBeCleanAsync();
    }

    static async Task<bool> ClosesAsync(IWebSocket socket)
    {
        var closing = new TaskCompletionSource();
        socket.Close += (_, _) => closing.TrySetResult();
        if (!socket.IsClosed)
        {
            await closing.Task.WaitAsync(TimeSpan.FromSeconds(10));
        }

        return socket.IsClosed;
    }

    /// <summary>The phone's picture of the kitchen does not change any more; its taps still arrive. In the page, since past a worker a route does not see every request.</summary>
    static async Task StandStillAsync(Screen screen) => await screen.Page.EvaluateAsync("""
        () => {
          const ask = fetch;
          globalThis.fetch = (what, how) => String(what).endsWith("/me-part") ? Promise.reject(new TypeError("No board comes.")) : ask(what, how);
        }
        """);

    /// <summary>A tap that no button offers.</summary>
    /// <returns>Whether it was accepted.</returns>
    static Task<bool> TapAsync(Screen screen, string run, string kind, string step) => screen.Page.EvaluateAsync<bool>("""
        async ({ run, kind, step }) => {
          const response = await fetch(`${run}/taps`, {
            method: "POST", headers: { "Content-Type": "application/json" }, redirect: "manual",
            body: JSON.stringify({ runId: run.split("/").pop(), commandId: crypto.randomUUID(), saw: 0, command: { kind, step } }),
          });
          return response.ok && (await response.json()).accepted;
        }
        """, new { run, kind, step });

    static ILocator Button(Screen screen, string name) => screen.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).First;

    static ILocator Card(Screen screen, string step) => screen.Page.Locator($"article#card-{step}");
}
