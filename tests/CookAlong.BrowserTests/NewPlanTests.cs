using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

[Collection(Browsers.Name)]
public sealed class NewPlanTests(Household house) : IClassFixture<Household>
{
    [Fact]
    public async Task A_job_that_runs_over_leads_to_a_new_plan_of_which_each_phone_is_told_its_part()
    {
        await using var tablet = await house.HostAsync(ScreenSize.Tablet);
        await Household.StartMashAsync(tablet);
        await using var ivo = await house.JoinAsync(tablet, "Ivo");
        await using var tobi = await house.JoinAsync(tablet, "Tobi");
        await using var maren = await house.HostAsync(ScreenSize.Phone);
        await maren.GoToAsync($"{new Uri(tablet.Page.Url).AbsolutePath}/me");

        // The chopping runs over, and the board says what that costs.
        await ivo.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Start") }).First.ClickAsync();
        for (var more = 0; more < 3; more++)
        {
            var before = await ivo.Page.Locator("article.job .of").InnerTextAsync();
            await ivo.Page.GetByRole(AriaRole.Button, new() { Name = "+ 5 min", Exact = true }).ClickAsync();
            await Expect(ivo.Page.Locator("article.job .of")).Not.ToHaveTextAsync(before);
        }

        await Expect(tablet.Page.Locator("#slip")).ToContainTextAsync("min late");
        await Expect(tablet.Page.Locator("#slip")).ToContainTextAsync("Supper at");
        await Expect(tablet.Page.Locator("#slip")).ToContainTextAsync("Behind: “Chop the cabbage”");

        // A way out is offered to the host, who looks at it and takes it; a guest cannot.
        await tablet.Page.GetByText("Show the new plan").ClickAsync();
        await Expect(tablet.Page.Locator("#offer")).ToContainTextAsync("Maren instead of Ivo: “Make the mash”");
        await Expect(ivo.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" })).ToHaveCountAsync(0);
        await tablet.PictureAsync("offer");
        await tablet.ShouldBeCleanAsync();
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the new plan" }).ClickAsync();

        // It is on time again, so nothing is late any more.
        await Expect(tablet.Page.Locator("#slip")).ToHaveCountAsync(0);
        await Expect(tablet.Page.Locator(".bar .late")).ToHaveCountAsync(0);

        // Everybody whose next step changed is told exactly that, and nobody else anything.
        await Expect(tablet.Page.Locator("#taken")).ToContainTextAsync("Maren instead of Ivo: “Make the mash”");
        await Expect(ivo.Page.Locator("#taken .own")).ToHaveTextAsync(["Not yours any more: “Make the mash”; Maren will do it"]);
        await Expect(maren.Page.Locator("#taken .own").First).ToContainTextAsync("“Make the mash”");
        await Expect(tobi.Page.Locator("#taken")).ToContainTextAsync("Nothing changes for you.");
        await Expect(tobi.Page.Locator("#taken")).Not.ToContainTextAsync("mash");
        await Expect(maren.Page.Locator("#live")).ToContainTextAsync("Make the mash");
        foreach (var screen in new[] { tablet, ivo, maren, tobi })
        {
            await screen.PictureAsync("new-plan");
            await screen.ShouldBeCleanAsync();
        }
    }
}
