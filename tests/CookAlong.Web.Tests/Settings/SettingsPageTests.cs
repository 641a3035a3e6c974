using System.Security.Claims;
using Bunit;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Quantities;
using CookAlong.Web.Data.Backups;
using CookAlong.Web.Features.Health;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Meals;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Settings;

public sealed class SettingsPageTests : BunitContext
{
    static readonly CancellationToken Stop = Xunit.TestContext.Current.CancellationToken;

    readonly HouseholdFile household = new();
    readonly HouseholdRegion region;
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 20, 9, 0, 0, TimeSpan.Zero));
    readonly HouseSettings settings;
    readonly DailyBackups daily;

    public SettingsPageTests()
    {
        region = new HouseholdRegion(household);
        settings = new HouseSettings(household.Folder, HouseSettings.DefaultUrls, [], []);
        daily = new DailyBackups(settings, new Backup(settings, clock), household, clock, NullLogger<DailyBackups>.Instance);
        Services.AddSingleton(region).AddSingleton(settings).AddSingleton(daily).AddSingleton<TimeProvider>(clock).AddSingleton(new AuditLog(household, clock)).AddHealth();
        this.AddAuthorization().SetAuthorized("Maren").SetClaims(new Claim(Visitor.SessionClaim, Guid.Empty.ToString()), new Claim(ClaimTypes.NameIdentifier, Guid.Empty.ToString()));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        household.Dispose();
    }

    IRenderedComponent<SettingsPage> Open()
    {
        var page = Render<SettingsPage>();
        page.WaitForState(() => page.FindAll("input").Count > 0);
        return page;
    }

    /// <summary>The line of a thing under a title; alike things share one.</summary>
    static string Line(IRenderedComponent<SettingsPage> page, string title, string what) =>
        page.FindAll("h3").Single(one => one.TextContent == title).NextElementSibling!.QuerySelectorAll("li")
            .Single(line => line.QuerySelector(".for")!.TextContent.Split("; ").Contains(what)).TextContent;

    [Fact]
    public async Task The_chosen_region_is_kept_and_its_limits_shown_with_their_sources()
    {
        var page = Open();
        Assert.Contains("Nobody has chosen yet", page.Find("[role=status]").TextContent, StringComparison.Ordinal);

        await page.Find("input[name=region][value=UnitedStates]").ChangeAsync(new() { Value = "UnitedStates" });

        Assert.Equal(new RegionInForce(Region.UnitedStates, IsChosen: true), await region.AskAsync(Stop));
        // USDA FSIS, Safe Minimum Internal Temperature Chart: poultry 165 °F.
        Assert.Contains("165 °F (74 °C)", Line(page, "Cooked, in the middle", "Whole poultry"), StringComparison.Ordinal);
        Assert.Contains("USDA FSIS, Safe Minimum Internal Temperature Chart", Line(page, "Cooked, in the middle", "Whole poultry"), StringComparison.Ordinal);
        // The same chart: ground beef, veal, lamb and pork 160 °F, ground poultry 165 °F.
        Assert.Contains("160 °F (71 °C)", Line(page, "Cooked, in the middle", "Mince, burgers and sausages of beef, veal, lamb and pork"), StringComparison.Ordinal);
        Assert.Contains("165 °F (74 °C)", Line(page, "Cooked, in the middle", "Poultry pieces and poultry mince"), StringComparison.Ordinal);
        // Cold Food Storage Chart: cooked meat 3 to 4 days.
        Assert.Contains("3 to 4 days", Line(page, "Leftovers, eaten within", "Meat, poultry or fish"), StringComparison.Ordinal);
        // Cold Food Storage Chart: salads do not freeze well.
        Assert.Contains("does not freeze well", Line(page, "Leftovers, frozen, at their best for", "Salad"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_a_region_has_no_limits_the_page_says_whom_to_ask()
    {
        var page = Open();

        await page.Find("input[value=Canada]").ChangeAsync(new() { Value = "Canada" });

        Assert.Contains("No limit of Health Canada is held here, and no other country's takes its place: ask them.", page.Markup, StringComparison.Ordinal);
        // Health Canada 2012: whole poultry 85 °C.
        Assert.Contains("85 °C", Line(page, "Cooked, in the middle", "Whole poultry"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_choice_takes_the_place_of_the_first()
    {
        await region.ChooseAsync(Region.Canada, Stop);
        await region.ChooseAsync(Region.Scotland, Stop);
        Assert.Equal(Region.Scotland, (await region.AskAsync(Stop)).Region);
    }

    [Fact]
    public void The_last_good_backup_is_told_in_words_and_stands_out_when_it_is_old()
    {
        Assert.Contains("There is no good backup yet.", Backups(), StringComparison.Ordinal);
        new Backup(settings, clock).To(new Backup(settings, clock).NextFile("by-hand"));
        clock.Advance(TimeSpan.FromHours(6.5));
        Assert.Matches(@"Last good backup: Sunday 20 December 2026, 09:00 UTC, 6 hours ago; \d+ KB; 0 meals, 0 dishes, 0 runs\.", Backups());
        Assert.Empty(Render<BackupPanel>().FindAll(".caution"));
        clock.Advance(TimeSpan.FromDays(3));
        Assert.StartsWith("Last good backup: Sunday 20 December 2026, 09:00 UTC, 3 days ago", Render<BackupPanel>().Find(".caution").TextContent, StringComparison.Ordinal);

        string Backups() => Render<BackupPanel>().Markup;
    }

    [Fact]
    public async Task How_the_server_is_is_said_when_asked()
    {
        var panel = Render<HealthPanel>();
        Assert.Empty(panel.FindAll("li"));

        await panel.Find("button").ClickAsync(new());

        panel.WaitForAssertion(() => Assert.Contains(panel.FindAll("li"), line => line.TextContent.Contains(household.Folder, StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_failed_backup_is_told_to_the_host()
    {
        var elsewhere = Path.Combine(household.Folder, "stick");
        var broken = settings with { BackupsElsewhere = elsewhere };
        using var failing = new DailyBackups(broken, new Backup(broken, clock), household, clock, NullLogger<DailyBackups>.Instance);
        await using (var db = household.CreateDbContext())
        {
            db.Sessions.Add(new() { Id = Guid.CreateVersion7(clock.GetUtcNow()), Person = Guid.Empty, BeganAt = 0 });
            await db.SaveChangesAsync(Stop);
        }

        Assert.False(await failing.LookAsync(Stop));
        Services.AddSingleton(failing);

        var said = Render<BackupPanel>().Find("[role=alert]").TextContent;
        Assert.StartsWith("The last try, Sunday 20 December 2026, 09:00 UTC, failed.", said, StringComparison.Ordinal);
        Assert.Contains(elsewhere, said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Region.UnitedStates, SpoonSizes.UnitedStates)]
    [InlineData(Region.Canada, SpoonSizes.Metric)]
    [InlineData(Region.Scotland, SpoonSizes.UnitedKingdom)]
    public async Task The_spoons_are_the_regions_until_somebody_chooses_others(Region chosen, SpoonSizes spoons)
    {
        await region.ChooseAsync(chosen, Stop);
        Assert.Equal(spoons, await region.SpoonsAsync(Stop));
        var page = Open();
        // NIST Handbook 44: a US cup is 236.6 mL, a tablespoon 14.8. From memory: the Australian tablespoon is 20 mL.
        Assert.Contains("tablespoon 15, cup 237, pint 473 ml", page.Markup, StringComparison.Ordinal);

        await page.Find("input[value=Australia]").ChangeAsync(new() { Value = "Australia" });

        Assert.Equal(SpoonSizes.Australia, await region.SpoonsAsync(Stop));
        Assert.Equal(chosen, (await region.AskAsync(Stop)).Region);
        Assert.Contains("teaspoon 5, tablespoon 20, cup 250, pint 568 ml", page.Markup, StringComparison.Ordinal);
        Assert.Contains("Saved: Australia.", page.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en-US", Region.UnitedStates)]
    [InlineData("fr-CA", Region.Canada)]
    [InlineData("en-GB", Region.UnitedKingdom)]
    [InlineData("gd-GB", Region.Scotland)]
    [InlineData("de-AT", Region.UnitedKingdom)]
    [InlineData("", Region.UnitedKingdom)]
    public void Until_somebody_chooses_the_computers_language_decides(string locale, Region supposed) => Assert.Equal(supposed, HouseholdRegion.Supposed(locale));
}
