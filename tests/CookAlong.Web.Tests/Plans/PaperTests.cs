using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Tests.Plans;

/// <summary>The printed plan as the server sends it.</summary>
public sealed class PaperTests : IDisposable
{
    readonly AppFactory app = new();

    public void Dispose() => app.Dispose();

    [Fact]
    public async Task The_whole_kitchen_stands_on_one_sheet_in_order_of_time()
    {
        var page = await PageAsync("");

        var sheet = Assert.Single(page.QuerySelectorAll(".sheet"));
        Assert.Equal("The whole kitchen", Words(sheet.QuerySelector(".whose")!));
        var lines = sheet.QuerySelectorAll("tbody tr:not(.newday)").Select(Words).ToList();
        Assert.Equal(AlderLane.Plan.Steps.Length, sheet.QuerySelectorAll("tr.step").Length);
        Assert.Equal(AlderLane.Plan.Tends.Length, sheet.QuerySelectorAll("tr.tend").Length);
        Assert.Contains("10:20 to 12:20 Roast the goose Oven, 1 shelf, 170–190 °C", lines);
        Assert.Contains(lines, line => line.StartsWith("11:05 to 11:33 Peel the potatoes ", StringComparison.Ordinal) && line.EndsWith(" Maren", StringComparison.Ordinal));
        Assert.True(lines.FindIndex(line => line.Contains("Roast the goose", StringComparison.Ordinal)) < lines.FindIndex(line => line.StartsWith("11:00 to 11:03 Baste and turn", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task The_dial_the_table_and_the_day_before_have_their_lines()
    {
        var page = await PageAsync("");

        Assert.Equal(["10:06 Set the oven to 180 °C, fan 160", "12:20 Turn the oven up to 200 °C, fan 180", "14:10 Turn the oven down to 90 °C, fan 70", "15:00 Turn the oven off"], page.QuerySelectorAll("tr.dial").Select(Words));
        Assert.Equal(["15:00 Main course on the table", "16:10 Pudding on the table"], page.QuerySelectorAll("tr.table").Select(Words));
        Assert.Equal(["Friday 18 December", "Saturday 19 December"], page.QuerySelectorAll(".newday").Select(Words));
    }

    [Fact]
    public async Task What_can_hurt_stands_in_the_line_that_it_belongs_to()
    {
        var page = await PageAsync("");

        var line = page.QuerySelectorAll("tr.step").Single(line => Words(line).Contains("Rough up the boiled potatoes", StringComparison.Ordinal));
        Assert.Equal("Take care. Hot fat: dry hands, long cloth.", Words(line.QuerySelector(".care")!));
        Assert.All(page.QuerySelectorAll(".sheet"), sheet => Assert.Contains("A thermometer decides", Words(sheet), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Each_person_has_a_sheet_with_their_own_jobs_where_it_is_wished()
    {
        var page = await PageAsync("?people=1");

        var sheets = page.QuerySelectorAll(".sheet").ToList();
        Assert.Equal(["The whole kitchen", "Maren", "Ivo", "Tobi"], sheets.Select(sheet => Words(sheet.QuerySelector(".whose")!)));
        var tobi = sheets[3];
        Assert.Equal(["Roll the herb dumplings", "Arrange the pears in the dish"], tobi.QuerySelectorAll("tr.step .words").Select(Words));
        Assert.Equal(2, tobi.QuerySelectorAll("tr.table").Length);
    }

    [Fact]
    public async Task Every_sheet_s_head_names_the_meal_its_day_and_its_table_times()
    {
        var page = await PageAsync("?people=1");

        Assert.All(page.QuerySelectorAll(".sheet table > thead"), head =>
        {
            Assert.StartsWith("Midwinter lunch Saturday 19 December 2026", Words(head), StringComparison.Ordinal);
            Assert.Contains("Main course at 15:00; Pudding at 16:10: on time.", Words(head), StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("?large=1", true)]
    public async Task Large_type_is_for_who_wishes_it(string query, bool isLarge)
    {
        var page = await PageAsync(query);

        Assert.Equal(isLarge, page.DocumentElement.ClassList.Contains("large"));
        Assert.Equal(isLarge, page.QuerySelector("input[name=large]")!.HasAttribute("checked"));
    }

    [Fact]
    public async Task Paper_that_is_out_of_date_says_so_on_every_sheet()
    {
        var host = await app.HostAsync();
        var kept = await app.KeepAsync(AlderLane.Meal, AlderLane.Plan);
        await app.Get<MealBook>().EditAsync(kept, meal => meal.Rename("Midwinter lunch, later"), fromNow: false, TestContext.Current.CancellationToken);

        var page = Parse(await host.ReadAsync($"/meals/{kept.Row.Id}/plan/paper?people=1"));

        Assert.All(page.QuerySelectorAll(".tables"), line => Assert.Contains("The meal has been changed since this plan was made.", Words(line), StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_meal_without_a_plan_leads_to_where_one_is_made()
    {
        var host = await app.HostAsync();
        var kept = await app.KeepAsync(AlderLane.Meal, plan: null);

        using var answer = await host.GetAsync($"/meals/{kept.Row.Id}/plan/paper");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal($"/meals/{kept.Row.Id}/plan", answer.Headers.Location!.OriginalString);
    }

    [Theory]
    [InlineData("paper")]
    [InlineData("calendar.ics")]
    public async Task Only_a_host_takes_a_plan_out(string what)
    {
        var kept = await app.KeepAsync(AlderLane.Meal, AlderLane.Plan);

        using var answer = await app.NewBrowser().GetAsync($"/meals/{kept.Row.Id}/plan/{what}");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("/sign-in", answer.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_served_under_the_strict_policy()
    {
        var host = await app.HostAsync();
        var kept = await app.KeepAsync(AlderLane.Meal, AlderLane.Plan);

        using var answer = await host.GetAsync($"/meals/{kept.Row.Id}/plan/paper");

        Assert.Contains("style-src 'self';", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
    }

    async Task<IDocument> PageAsync(string query)
    {
        var host = await app.HostAsync();
        var kept = await app.KeepAsync(AlderLane.Meal, AlderLane.Plan);
        return Parse(await host.ReadAsync($"/meals/{kept.Row.Id}/plan/paper{query}"));
    }

    static IDocument Parse(string html) => new HtmlParser().ParseDocument(html);

    static string Words(IElement element) => string.Join(' ', element.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
