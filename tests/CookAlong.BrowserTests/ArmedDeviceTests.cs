using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

/// <summary>What an armed device owes the kitchen: it rings at its time whoever is there, and says so when it no longer can.</summary>
[Collection(Browsers.Name)]
public sealed class ArmedDeviceTests(Household house) : IClassFixture<Household>
{
    /// <summary>Keeps what is played and said, since nobody listens here, and the thing that plays it.</summary>
    const string Listens = """
        globalThis.played = [];
        globalThis.spoken = [];
        const start = AudioScheduledSourceNode.prototype.start;
        AudioScheduledSourceNode.prototype.start = function (...at) {
          played.push(this.type);
          return start.apply(this, at);
        };
        SpeechSynthesis.prototype.speak = (words) => spoken.push(words.text);
        globalThis.AudioContext = class extends AudioContext {
          constructor(...how) {
            super(...how);
            globalThis.audio = this;
          }
        };
        """;

    /// <summary>Counts what is asked of the device.</summary>
    const string Asks = """
        globalThis.asked = [];
        Notification.requestPermission = () => { asked.push("notifications"); return Promise.resolve("granted"); };
        Object.defineProperty(Notification, "permission", { get: () => asked.includes("notifications") ? "granted" : "default" });
        navigator.vibrate = () => { asked.push("shake"); return true; };
        navigator.wakeLock.request = async () => { asked.push("awake"); return Object.assign(new EventTarget(), {}); };
        ServiceWorkerRegistration.prototype.showNotification = async (title) => { asked.push(`shown: ${title}`); };
        """;

    [Fact]
    public async Task Arming_asks_for_all_a_device_may_refuse_and_a_call_is_shown_over_another_app()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", Listens + Asks);
        await ivo.HoldAsync("!!navigator.serviceWorker.controller");
        await ArmAsync(ivo);
        await ivo.HoldAsync("['shake', 'awake', 'notifications'].every((one) => asked.includes(one))");
        Assert.DoesNotContain("shown", await ivo.Page.EvaluateAsync<string>("asked.join()"), StringComparison.Ordinal);

        // The test call once more, while something else is in front.
        await ivo.Page.EvaluateAsync("Object.defineProperty(document, 'hidden', { get: () => true, configurable: true })");
        await ivo.Page.Locator("#arm [data-arm]").ClickAsync();
        await ivo.HoldAsync("asked.some((one) => one.startsWith('shown'))");
    }

    // The device's own clock is the test's: a quarter of an hour of chopping and three minutes more pass in a moment.
    [Fact]
    public async Task An_armed_phone_rings_and_speaks_at_its_time_with_the_server_dead_and_no_network()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", Listens);
        await ivo.Page.EvaluateAsync("localStorage.setItem('cookalong.speaks', 'yes')");
        await ivo.Page.Clock.InstallAsync();
        await ivo.Page.ReloadAsync();
        await Button(ivo, "Start").ClickAsync();
        await Expect(ivo.Page.Locator("article.job")).ToContainTextAsync("left");
        await ArmAsync(ivo);

        await house.Server.KillAsync();
        await ivo.Context.SetOfflineAsync(true);
        await ivo.Page.Clock.FastForwardAsync("17:30");
        await Expect(ivo.Page.Locator("#cut-off")).ToBeVisibleAsync();
        await Expect(ivo.Page.Locator("#ringing")).Not.ToContainTextAsync("Chop");
        await ivo.Page.EvaluateAsync("played.length = spoken.length = 0");
        await ivo.Page.Clock.FastForwardAsync("01:00");

        // A step that runs late is a call of the middle kind, which has its own sound.
        var over = ivo.Page.Locator("#ringing .medium").Filter(new() { HasText = "Running over: Chop the vegetables" });
        await Expect(over).ToBeVisibleAsync();
        await ivo.HoldAsync("played.includes('triangle')");
        await ivo.Page.Clock.FastForwardAsync("00:02");
        await ivo.HoldAsync("spoken.some((text) => text.includes('Chop the vegetables'))");

        // Nothing on it comes and goes more than three times a second (WCAG 2.2, 2.3.1).
        await ivo.Page.EvaluateAsync("""
            globalThis.changes = new Map();
            new MutationObserver((all) => all.forEach(({ target }) => changes.set(target, (changes.get(target) ?? 0) + 1)))
              .observe(document.body, { subtree: true, childList: true, attributeFilter: ["class", "hidden"] });
            """);
        await ivo.Page.Clock.RunForAsync(3_000);
        Assert.InRange(await ivo.Page.EvaluateAsync<int>("Math.max(0, ...changes.values())"), 0, 9);

        // However many ring, and however far down the page is read, it stays in sight that this is no news.
        await ivo.HoldAsync("""
            (() => {
              scrollTo(0, document.body.scrollHeight);
              const { x, y, width, height } = document.getElementById("cut-off").getBoundingClientRect();
              return document.elementFromPoint(x + width / 2, y + height / 2)?.id === "cut-off";
            })()
            """);
        await ivo.PictureAsync("rings-alone");
        await ivo.ShouldBeCleanAsync();

        // The answer is kept here, quiet at once, and marked as not yet sent.
        await over.GetByRole(AriaRole.Button, new() { Name = "I have it" }).ClickAsync();
        await Expect(over).ToHaveCountAsync(0);
        await Expect(ivo.Page.Locator("#outbox")).ToContainTextAsync("Waiting to send: I have it");
        await house.Server.RestartAsync();
    }

    [Fact]
    public async Task A_device_whose_sound_is_stopped_is_not_armed_and_the_host_is_warned_again()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartSoupAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo", Listens);
        await Expect(tablet.Page.Locator("#unheard")).ToBeVisibleAsync();
        await ArmAsync(ivo);
        await Expect(tablet.Page.Locator("#unheard")).ToHaveCountAsync(0);

        // The browser takes the sound away, as it does for a telephone call.
        await ivo.Page.EvaluateAsync("audio.suspend()");

        await Expect(ivo.Page.Locator("#arm")).ToHaveAttributeAsync("data-armed", "no");
        await Expect(ivo.Page.Locator("#arm")).ToContainTextAsync("Not armed: the browser has stopped this screen’s sound");
        await Expect(tablet.Page.Locator("#unheard")).ToBeVisibleAsync();
        await ivo.ShouldBeCleanAsync();

        // One tap and it is heard of again.
        await Button(ivo, "Arm this device").ClickAsync();
        await Expect(tablet.Page.Locator("#unheard")).ToHaveCountAsync(0);
    }

    static async Task ArmAsync(Screen phone)
    {
        await Button(phone, "Arm this device").ClickAsync();
        await Button(phone, "I heard it").ClickAsync();
        await Expect(phone.Page.Locator("#arm")).ToHaveAttributeAsync("data-armed", "yes");
    }

    static ILocator Button(Screen screen, string name) => screen.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).First;
}
