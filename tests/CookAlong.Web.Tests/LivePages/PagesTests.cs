using System.Text.RegularExpressions;

namespace CookAlong.Web.Tests.LivePages;

public sealed partial class PagesTests
{
    public static TheoryData<string> Names => [.. Pages.All.Keys];

    // The pages' policy is script-src 'self'; style-src 'self': anything inline would be dropped by the browser without a word.
    [Theory, MemberData(nameof(Names))]
    public async Task A_page_has_nothing_inline(string name)
    {
        var html = await Pages.All[name]();

        Assert.DoesNotMatch(Inline(), html);
        await KeepToLookAt(name, html);
    }

    [Theory, MemberData(nameof(Names))]
    public async Task Every_id_of_a_page_is_there_once(string name)
    {
        var ids = Id().Matches(await Pages.All[name]()).Select(match => match.Groups[1].Value).ToList();

        Assert.Equal(ids.Distinct(), ids);
    }

    // With COOKALONG_PAGES=DIR the pages stay behind as files, to be looked at in a browser.
    static async Task KeepToLookAt(string name, string html)
    {
        if (Environment.GetEnvironmentVariable("COOKALONG_PAGES") is { Length: > 0 } directory)
        {
            await File.WriteAllTextAsync(Path.Combine(directory, $"{name}.html"), html, TestContext.Current.CancellationToken);
        }
    }

    [GeneratedRegex(@"\sstyle=|<style|\son[a-z]+=|<script(?![^>]*\ssrc=)")]
    private static partial Regex Inline();

    [GeneratedRegex(@"\sid=""([^""]+)""")]
    private static partial Regex Id();
}
