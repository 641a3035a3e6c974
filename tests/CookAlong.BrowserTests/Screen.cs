using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>A tablet, a phone or a desktop: one page in a browser context of its own, that remembers what the page complained about.</summary>
public sealed class Screen : IAsyncDisposable
{
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

    /// <summary>Script errors and content-security-policy reports so far.</summary>
    public IReadOnlyList<string> Complaints => complaints;

    public async Task GoToAsync(string path) => await Page.GotoAsync(path);

    /// <summary>Holds the page as it stands against axe-core's rules and the page's own script errors.</summary>
    public async Task ShouldBeCleanAsync()
    {
        var result = await Page.RunAxe();
        var found = result.Violations.Select(one =>
            $"{one.Id}: {one.Help} at {string.Join(", ", one.Nodes.Select(node => node.Target))}");
        Assert.Empty(found);
        Assert.Empty(complaints);
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
