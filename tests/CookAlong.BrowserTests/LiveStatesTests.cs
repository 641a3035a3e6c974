using CookAlong.Web.Tests.LivePages;
using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>Every state that a page without a circuit can be in, drawn from sample boards and dressed by the real server: clean, and with what matters in sight.</summary>
[Collection(Browsers.Name)]
public sealed class LiveStatesTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task Every_state_is_clean_by_day_and_by_night()
    {
        await using var screen = await OpenAsync("states", ScreenSize.Tablet, ColorScheme.Light);
        foreach (var state in Pages.All.Keys)
        {
            var size = IsOfTheTablet(state) ? ScreenSize.Tablet : ScreenSize.Phone;
            await screen.Page.SetViewportSizeAsync(size.Width, size.Height);
            await screen.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
            await screen.GoToAsync($"/states/{state}");
            await screen.ShouldBeCleanAsync();

            // By night only the colours are others.
            await screen.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
            await screen.ShouldBeCleanAsync("color-contrast");
        }
    }

    [Theory]
    [InlineData("board-calm")]
    [InlineData("me-busy")]
    public async Task What_the_script_says_by_itself_is_clean(string state)
    {
        await using var screen = await OpenAsync(state, ScreenSize.Tablet, ColorScheme.Light);
        await screen.Page.RouteAsync("**/js/{signs,words,root}.js", script => script.ContinueAsync());
        await screen.GoToAsync($"/states/{state}");
        await screen.Page.EvaluateAsync("""
            async () => {
              const signs = await import("/js/signs.js");
              const live = document.getElementById("live");
              const call = (callId, priority, text) => ({ callId, dueUtc: 0, kind: "out", priority, text, step: null, acknowledged: false });
              signs.showRinging([call("a", "high", "Tray out: Goose out, then cover it with foil"), call("b", "medium", "Turn the oven to 200 °C"), call("c", "low", "Main course: to the table in 10 minutes")], live);
            }
            """);
        await screen.ShouldBeCleanInEveryLightAsync("ringing");

        await screen.Page.EvaluateAsync("""
            async () => {
              const signs = await import("/js/signs.js");
              const live = document.getElementById("live");
              signs.showRinging([], live);
              signs.showCutOff("13:20:05");
              const button = live.querySelector("[data-tap]");
              signs.showWaiting(live, [{ label: button.textContent, command: JSON.parse(button.dataset.tap) }]);
            }
            """);
        await screen.ShouldBeCleanInEveryLightAsync("offline");
    }

    /// <summary>Who taps eight times on what is refused had the board covered by one sentence.</summary>
    [Fact]
    public async Task What_is_said_again_is_not_said_twice()
    {
        await using var screen = await OpenAsync("again", ScreenSize.Tablet, ColorScheme.Light);
        await screen.Page.RouteAsync("**/js/{signs,words,root}.js", script => script.ContinueAsync());
        await screen.GoToAsync("/states/board-calm");
        var said = await screen.Page.EvaluateAsync<string[]>("""
            async () => {
              const { say } = await import("/js/signs.js");
              for (const sentence of ["Not safe yet", "Somebody else has it", "Not safe yet"]) say(sentence);
              for (const stays of [true, true]) say("Not done", stays);
              return [...document.querySelectorAll("#said p")].map((line) => line.firstChild.textContent);
            }
            """);
        Assert.Equal(["Somebody else has it", "Not safe yet", "Not done"], said);
    }

    public static TheoryData<string, int, int, ColorScheme> Looks() =>
        new(PagesTests.Looks().Select(look => look.Data).Append(("upright", ScreenSize.Upright.Width, ScreenSize.Upright.Height, ColorScheme.Light)));

    [Theory]
    [MemberData(nameof(Looks))]
    public async Task No_state_is_wider_than_its_screen(string name, int width, int height, ColorScheme scheme)
    {
        await using var screen = await OpenAsync($"{name}-{scheme}", new(width, height), scheme);
        foreach (var state in Pages.All.Keys)
        {
            await screen.GoToAsync($"/states/{state}");
            await screen.PictureAsync(state);
            var beyond = await screen.Page.EvaluateAsync<string[]>("document.documentElement.scrollWidth <= innerWidth ? [] : [...document.querySelectorAll('body *')].filter(one => one.getBoundingClientRect().right > innerWidth).map(one => one.outerHTML.slice(0, 90))");
            Assert.True(beyond.Length == 0, $"{state} is too wide: {string.Join("\n", beyond)}");
        }
    }

    // A thumb on a phone that lies beside the board: 48 CSS px, as the platforms' own guides ask for.
    [Fact]
    public async Task Every_button_of_a_phone_is_as_high_as_a_thumb_needs()
    {
        await using var screen = await OpenAsync("thumb", ScreenSize.Phone, ColorScheme.Light);
        foreach (var state in Pages.All.Keys.Where(state => state.StartsWith("me", StringComparison.Ordinal)))
        {
            await screen.GoToAsync($"/states/{state}");
            var low = await screen.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('button, summary')].filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 48).map(one => `${one.textContent.trim()} ${one.getBoundingClientRect().height}`)");
            Assert.True(low.Length == 0, $"{state}: {string.Join("; ", low)}");
        }
    }

    static bool IsOfTheTablet(string state) => state.StartsWith("board", StringComparison.Ordinal);

    // A wall tablet is read across the room, and nobody scrolls it with floury hands.
    [Theory]
    [InlineData("board-busy")]
    [InlineData("board-calm")]
    [InlineData("board-held")]
    [InlineData("board-paused")]
    [InlineData("board-crowded")]
    [InlineData("board-taken")]
    public async Task On_the_wall_tablet_jobs_oven_rings_and_brake_are_in_sight(string state)
    {
        foreach (var size in new[] { ScreenSize.Tablet, ScreenSize.Upright, ScreenSize.Desktop })
        {
            await using var screen = await OpenAsync($"sight-{size.Width}", size, ColorScheme.Light);
            await screen.GoToAsync($"/states/{state}");
            foreach (var thing in new[] { ".bar", ".now", ".oven", ".plates" })
            {
                var box = await screen.Page.Locator(thing).BoundingBoxAsync();
                Assert.NotNull(box);
                Assert.True(box.Y >= 0 && box.Y + box.Height <= size.Height, $"{thing} ends at {box.Y + box.Height} of {size.Height} px on {size.Width} x {size.Height}");
            }
        }
    }

    // Tablets of 10 and 11 inches have 5.2 px to the millimetre, small ones 5.9.
    [Theory]
    [InlineData("wall-busy")]
    [InlineData("wall-calm")]
    [InlineData("wall-crowded")]
    [InlineData("wall-paused")]
    [InlineData("wall-unheard")]
    [InlineData("wall-late-unheard")]
    public async Task Across_the_room_nothing_scrolls_and_nothing_is_cut_in_half(string state)
    {
        foreach (var size in new[] { ScreenSize.Tablet, new ScreenSize(1280, 800), ScreenSize.Upright, new ScreenSize(1080, 1920) })
        {
            await using var screen = await OpenAsync($"{size.Width}", size, ColorScheme.Light);
            await screen.GoToAsync($"/states/{state}");
            foreach (var millimetre in new[] { "5.9px", "5.2px" })
            {
                await screen.Page.EvaluateAsync("mm => document.documentElement.style.setProperty('--mm', mm)", millimetre);
                await screen.PictureAsync($"{state}-{millimetre}");
                var wrong = await screen.Page.EvaluateAsync<string[]>("""
                    () => {
                      const box = (one) => one.getBoundingClientRect();
                      const all = (what) => [...document.querySelectorAll(what)].filter((one) => one.checkVisibility());
                      const isIn = ({ top, bottom, left, right }) => top >= 0 && bottom <= innerHeight && left >= 0 && right <= innerWidth;
                      const isLeftOut = (one) => box(one).left >= box(one.parentElement).right;
                      const told = (one) => `${one.className || one.tagName}: ${one.textContent.trim().slice(0, 40)} ${JSON.stringify(box(one))}`;
                      const card = document.querySelector(".wall-card");
                      return [
                        ...(document.documentElement.scrollHeight > innerHeight ? ["the page scrolls"] : []),
                        ...all(".wall-bar .clock, .wall-bar button, .wall-bar a, .wall-room, .wall-card, .wall-card > *").filter((one) => !isIn(box(one))).map(told),
                        ...all(".wall-card > *").filter((one) => box(one).bottom > box(card).bottom).map(told),
                        ...all(".wall-card > .called").filter((one) => one.scrollWidth > one.clientWidth || one.scrollHeight > one.clientHeight + parseFloat(getComputedStyle(one).lineHeight) / 2).map((one) => `cut: ${told(one)}`),
                        ...all(".wall-bar li b").filter((one) => box(one).right > box(one.parentElement).right).map((one) => `cut: ${told(one)}`),
                        ...all(".wall-line").filter((one) => !isIn(box(one)) && !isLeftOut(one)).map(told),
                      ];
                    }
                    """);
                Assert.True(wrong.Length == 0, $"{state} on {size.Width} x {size.Height} at {millimetre}: {string.Join("; ", wrong)}");
            }
        }
    }

    [Theory]
    [InlineData(1180, 820)]
    [InlineData(1280, 800)]
    [InlineData(820, 1180)]
    public async Task Across_the_room_what_comes_next_is_in_sight_while_nothing_is_called(int width, int height)
    {
        await using var screen = await OpenAsync("next", new(width, height), ColorScheme.Light);
        await screen.GoToAsync("/states/wall-calm");
        await screen.Page.EvaluateAsync("document.documentElement.style.setProperty('--mm', '5.2px')");
        var box = (await screen.Page.Locator(".wall-line.next").BoundingBoxAsync())!;
        Assert.True(box.X < width / 2 && box.Y + box.Height <= height, $"It lies at {box.X}, {box.Y}.");
    }

    async Task<Screen> OpenAsync(string name, ScreenSize size, ColorScheme scheme)
    {
        var screen = await house.OpenAsync(name, size, scheme);

        // No script: it would count on from the sample's hour, and find that its run is not there.
        await screen.Page.RouteAsync("**/*.js", script => script.AbortAsync());
        await screen.Page.RouteAsync("**/states/*", async page => await page.FulfillAsync(new()
        {
            ContentType = "text/html; charset=utf-8",
            Body = await Pages.All[new Uri(page.Request.Url).Segments[^1]](),
        }));
        return screen;
    }
}
