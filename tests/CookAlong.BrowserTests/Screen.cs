using System.Text.Json;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>A tablet, a phone or a desktop: one page in a browser context of its own, that remembers what the page complained about.</summary>
public sealed class Screen : IAsyncDisposable
{
    static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    // A ground with less than half its red, and one with more.
    static readonly Regex Dark = new(@"^\D*(\d{1,2}|1[01]\d|12[0-7])\D");
    static readonly Regex Light = new(@"^\D*(12[89]|1[3-9]\d|2\d\d)\D");

    // A board may be patched while axe-core measures it, and then a colour of before stands on a ground of after.
    // So what it finds counts when it finds it again on a page that has kept still; the digits of a countdown change every second.
    const string LookUntilStill = """
        async rule => {
          // A strip that sticks to the top covers what was scrolled under it, which axe-core takes for its ground.
          scrollTo(0, 0);
          const look = () => axe.run(document, rule ? { runOnly: [rule] } : {});
          const stillness = () => new Promise(done => {
            const end = () => { watch.disconnect(); clearTimeout(longest); done(); };
            let still = setTimeout(end, 400);
            const longest = setTimeout(end, 3000);
            const watch = new MutationObserver(() => { clearTimeout(still); still = setTimeout(end, 400); });
            watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
          });
          // What moved while it looked, as a board does, may have been measured against a ground that is another's.
          let moved = true;
          const witness = new MutationObserver((changes) => { moved ||= changes.some((change) => change.type === "childList" && change.target !== document.head); });
          witness.observe(document.body, { subtree: true, childList: true });
          let found = await look();
          for (let again = 0, looks = 1; again < 3 && looks < 12 && found.violations.length > 0; looks++) {
            await stillness();
            moved = false;
            found = await look();
            again += moved ? 0 : 1;
          }
          witness.disconnect();
          return found;
        }
        """;

    readonly List<string> complaints = [];

    public Screen(string name, IBrowserContext context, IPage page)
    {
        Name = name;
        Context = context;
        Page = page;
        page.PageError += (_, error) => complaints.Add(error);
        page.Console += (_, message) =>
        {
            if (message.Type == "error" && message.Text.Contains("Content Security Policy", StringComparison.Ordinal))
            {
                complaints.Add(message.Text);
            }
        };
    }

    public string Name { get; }

    public IBrowserContext Context { get; }

    public IPage Page { get; }

    /// <summary>Waits until a JavaScript expression that may have to be awaited holds. Playwright's own waiting takes any promise for a yes.</summary>
    public Task HoldAsync(string expression) =>
        Page.EvaluateAsync($"async () => {{ while (!(await ({expression}))) await new Promise(requestAnimationFrame); }}").WaitAsync(TimeSpan.FromSeconds(30));

    /// <summary>Script errors and content-security-policy reports so far.</summary>
    public IReadOnlyList<string> Complaints => complaints;

    public async Task GoToAsync(string path) => await Page.GotoAsync(path);

    /// <summary>Holds the page as it stands against axe-core's rules and the page's own script errors.</summary>
    /// <param name="rule">Only this one of axe-core's rules; null = all.</param>
    public async Task ShouldBeCleanAsync(string? rule = null)
    {
        // In the page itself: the package's own way opens a second page each time, which takes most of a test's time.
        // No page here has a frame, which is all that second page is for.
        if (await Page.EvaluateAsync<bool>("typeof axe === 'undefined'"))
        {
            await Page.EvaluateAsync(Axe);
        }

        var result = await Page.EvaluateAsync<JsonElement>(LookUntilStill, rule);
        var found = result.GetProperty("violations").EnumerateArray().Select(one =>
            $"{one.GetProperty("id")}: {one.GetProperty("help")} at {string.Join(", ", one.GetProperty("nodes").EnumerateArray().Select(node => $"{node.GetProperty("target")} ({node.GetProperty("failureSummary").GetString()} On: {Ground(node)})"))}").ToList();
        if (found.Count > 0)
        {
            await PictureAsync($"unclean-{Name}");
        }

        Assert.True(found.Count == 0, $"{Page.Url}: {string.Join("; ", found)}");
        Assert.Empty(complaints);
    }

    /// <summary>The elements that axe-core measured against, for colours that come from elsewhere.</summary>
    static string Ground(JsonElement node) => string.Join(" ", node.GetProperty("any").EnumerateArray()
        .SelectMany(check => check.GetProperty("relatedNodes").EnumerateArray())
        .Select(related => related.GetProperty("html").GetString()));

    /// <summary>The same on a phone and on a tablet, by day and by night, with a picture of each.</summary>
    public async Task ShouldBeCleanInEveryLightAsync(string title)
    {
        foreach (var (scheme, look) in new[] { (ColorScheme.Light, "day"), (ColorScheme.Dark, "night") })
        {
            await Page.EmulateMediaAsync(new() { ColorScheme = scheme });

            // On a page with a circuit the server hears of it first.
            await Assertions.Expect(Page.Locator("body")).ToHaveCSSAsync("background-color", scheme == ColorScheme.Dark ? Dark : Light);
            foreach (var (size, device) in new[] { (ScreenSize.Phone, "phone"), (ScreenSize.Tablet, "tablet") })
            {
                await Page.SetViewportSizeAsync(size.Width, size.Height);
                await PictureAsync($"{title}-{device}-{look}");
                await ShouldBeCleanAsync();
                Assert.True(await Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{title} is too wide for a {device}");
            }
        }
    }

    /// <summary>Where COOKALONG_SCREENSHOTS names a folder, keeps a picture there for a person to look at.</summary>
    public async Task PictureAsync(string title)
    {
        if (Environment.GetEnvironmentVariable("COOKALONG_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{title}-{Name}.png") });
        }
    }

    public async ValueTask DisposeAsync() => await Context.DisposeAsync();
}
