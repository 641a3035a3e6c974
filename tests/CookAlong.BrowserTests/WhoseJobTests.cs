using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>Whose a job is: taken, kept, free again by the clock, handed on, taken over. The clock is in the test's hand.</summary>
[Collection(Browsers.Name)]
public sealed class WhoseJobTests(Chromium chromium)
{
    [Fact]
    public async Task A_job_that_was_taken_and_not_begun_is_kept_by_I_am_on_it_and_is_free_again_when_its_time_is_up()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium);
        var ivo = await kitchen.JoinAsync("Ivo");
        var runa = await kitchen.JoinAsync("Runa");
        await Button(ivo, "Let go").ClickAsync();
        await Take(ivo).ClickAsync();

        // How long it is theirs is said on their phone and on the board.
        await Expect(ivo.Page.Locator(".held")).ToContainTextAsync("Yours until 12:05, unless you start");
        await Expect(Card(kitchen.Tablet)).ToContainTextAsync("Stays with Ivo until 12:05");
        await ivo.PictureAsync("held");
        await Button(ivo, "I am on it").ClickAsync();
        await Expect(ivo.Page.Locator(".held")).ToContainTextAsync("Yours until 12:10");
        await Expect(Card(kitchen.Tablet)).ToContainTextAsync("Stays with Ivo until 12:10");

        // Past the first time it is his all the same.
        await kitchen.GoToAsync(12, 9, 30);
        await Expect(ivo.Page.Locator(".held time")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("^0:[123]\\d$"));
        await Expect(Take(runa)).ToHaveCountAsync(0);
        await ivo.ShouldBeCleanAsync();

        // Past the second it is anybody's, without a touch.
        await kitchen.GoToAsync(12, 10, 1);
        await Expect(Take(runa)).ToBeVisibleAsync();
        await Expect(Take(ivo)).ToBeVisibleAsync();
        await Expect(Card(kitchen.Tablet)).ToContainTextAsync("free to take");
        await runa.PictureAsync("freed");
        await Take(runa).ClickAsync();
        await Expect(runa.Page.Locator("article.job")).ToContainTextAsync("Chop the cabbage");
        await Expect(Card(kitchen.Tablet)).ToContainTextAsync("Runa");
        await kitchen.Tablet.ShouldBeCleanAsync();
    }

    [Fact]
    public async Task A_job_handed_over_is_on_the_other_phone_and_gone_from_one_s_own()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium);
        var ivo = await kitchen.JoinAsync("Ivo");
        var runa = await kitchen.JoinAsync("Runa");
        await Expect(runa.Page.Locator("article.job")).ToHaveCountAsync(0);

        await ivo.Page.GetByText("Hand it over").ClickAsync();
        await ivo.PictureAsync("hand-over");
        await ivo.ShouldBeCleanAsync();
        await ivo.Page.GetByRole(AriaRole.Button, new() { Name = "To Runa" }).ClickAsync();

        await Expect(runa.Page.Locator("article.job")).ToContainTextAsync("Chop the cabbage");
        await Expect(ivo.Page.Locator("article.job")).ToHaveCountAsync(0);
        await Expect(Card(kitchen.Tablet).Locator(".who")).ToContainTextAsync("Runa");
        await Button(runa, "Start").ClickAsync();
        await Expect(Card(kitchen.Tablet)).ToContainTextAsync("left");
    }

    [Fact]
    public async Task The_host_takes_a_job_over_and_whoever_had_it_sees_that_it_is_not_theirs()
    {
        await using var kitchen = await ClockedKitchen.StartAsync(chromium);
        var ivo = await kitchen.JoinAsync("Ivo");
        var maren = await kitchen.HostPhoneAsync();
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("Chop the cabbage");
        await Expect(ivo.Page.GetByRole(AriaRole.Button, new() { Name = "Take it over" })).ToHaveCountAsync(0);

        await kitchen.Tablet.Page.Locator("#more-chop summary").ClickAsync();
        await kitchen.Tablet.PictureAsync("take-over");
        await kitchen.Tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take it over" }).ClickAsync();

        await Expect(Card(kitchen.Tablet).Locator(".who")).ToContainTextAsync("Maren");
        await Expect(maren.Page.Locator("article.job")).ToContainTextAsync("Chop the cabbage");
        await Expect(ivo.Page.Locator("article.job")).ToHaveCountAsync(0);

        // What follows in the plan is Ivo's still.
        await Expect(ivo.Page.Locator("#live")).ToContainTextAsync("Make the mash");
        await kitchen.Tablet.ShouldBeCleanAsync();
        await ivo.ShouldBeCleanAsync();
    }

    static ILocator Take(Screen screen) => screen.Page.GetByRole(AriaRole.Button, new() { NameRegex = new(@"I’ll take it\s*: Chop") });

    static ILocator Button(Screen screen, string name) => screen.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).First;

    static ILocator Card(Screen screen) => screen.Page.Locator("article#card-chop");
}
