using CookAlong.Web.Data;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Household;

/// <summary>OWASP ASVS 5.0.0, 16.2.1 (when, where, who, what) and 16.3.1 (sign-ins, good and bad).</summary>
public sealed class AuditTests
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_came_and_who_was_refused_is_written_down_with_the_time()
    {
        await using var app = new AppFactory();
        var host = await app.HostAsync();
        app.Clock.Leap(TimeSpan.FromMinutes(1));
        using var _ = await app.NewBrowser().PostFormAsync("/sign-in", new() { ["name"] = "my secret typed in the wrong field", ["password"] = "no" });
        await app.HostAsync();
        using var _2 = await host.PostFormAsync("/sign-out", [], page: "/sign-in");

        var rows = await RowsAsync(app);

        Assert.Equal(
            ["HostAdded Rowan", "SignInRefused ", "SignedIn Rowan", "SignedOut Rowan"],
            rows.Select(row => $"{row.Deed} {row.Who}"));
        Assert.Equal(new DateTimeOffset(2026, 12, 20, 9, 1, 0, TimeSpan.Zero).ToUnixTimeMilliseconds(), rows[1].At);
        Assert.All(rows, row => Assert.NotNull(row.Address));
    }

    [Fact]
    public async Task Codes_guests_and_what_is_put_out_are_written_down_and_no_secret_is()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}/invite");
        await kitchen.JoinAsync("Ivo");
        using var wrong = await kitchen.House.NewBrowser().PostFormAsync("/join", new() { ["code"] = "NO7ACODE", ["name"] = "Nobody" });
        var secret = await HostsTests.InviteAsync(kitchen.Host);

        var rows = await RowsAsync(kitchen.House);

        AuditDeed[] happened = [AuditDeed.JoinCodeMade, AuditDeed.GuestJoined, AuditDeed.JoinRefused, AuditDeed.HostInvited];
        Assert.Superset(happened.ToHashSet(), rows.Select(row => row.Deed).ToHashSet());
        Assert.Contains(rows, row => row is { Deed: AuditDeed.GuestJoined, Who: "Ivo" });
        var all = string.Join('\n', rows.Select(row => $"{row.Who} {row.About} {row.Address}"));
        Assert.DoesNotContain(secret, all, StringComparison.Ordinal);
        Assert.DoesNotContain(AppFactory.HostPassword, all, StringComparison.Ordinal);
        Assert.DoesNotContain("NO7ACODE", all, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_put_out_by_a_tap_on_the_board_is_written_down_once()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.JoinAsync("Ivo");
        var ivo = (await kitchen.LoadAsync()).People.Values.Single(person => person.Name == "Ivo").Person;
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "putOut", person = ivo.Value })).Accepted);
        await kitchen.TapAsync(kitchen.Host, new { kind = "putOut", person = ivo.Value });

        var row = Assert.Single(await RowsAsync(kitchen.House), row => row.Deed == AuditDeed.GuestPutOut);

        Assert.Equal((AppFactory.HostName, "Ivo"), (row.Who, row.About));
        Assert.NotNull(row.Address);
    }

    [Fact]
    public async Task What_a_host_sets_for_the_shop_is_written_down_and_ticks_are_not()
    {
        await using var kitchen = await Shopping.ShoppingTests.KitchenAsync();
        await Shopping.ShoppingTests.TapAsync(kitchen.Host, Shopping.ShoppingTests.Mark("onion", "bought"));
        await Shopping.ShoppingTests.TapAsync(kitchen.Host, new { kind = "currency", code = "EUR" });
        await Shopping.ShoppingTests.TapAsync(kitchen.Host, new { kind = "aisles", order = new[] { "frozen" } });

        Assert.Equal(
            ["the currency: EUR", "the order of the aisles"],
            (await RowsAsync(kitchen.House)).Where(row => row.Deed == AuditDeed.SettingsChanged).Select(row => row.About));
    }

    [Fact]
    public async Task A_page_refused_to_a_guest_is_in_the_servers_log()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");

        using var answer = await ivo.GetAsync("/account/log");

        Assert.Equal(System.Net.HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Contains(kitchen.House.Log, line => line.Contains("may not open HTTP: GET /account/log", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_changed_about_an_account_is_written_down()
    {
        await using var app = new AppFactory();
        var host = await app.HostAsync();
        await app.HostAsync();
        using var _1 = await host.PostFormAsync("/account/sessions/end-others", [], page: "/account");
        using var _2 = await host.PostFormAsync("/account/password", new() { ["current"] = "wrong", ["next"] = "nine kettles on a cold morning" }, page: "/account");
        using var _3 = await host.PostFormAsync("/account/password", new() { ["current"] = AppFactory.HostPassword, ["next"] = "nine kettles on a cold morning" }, page: "/account");

        Assert.Equal(["SessionEnded 1 other device", "PasswordChangeRefused ", "PasswordChanged "], (await RowsAsync(app)).TakeLast(3).Select(row => $"{row.Deed} {row.About}"));
    }

    [Fact]
    public async Task The_log_is_a_page_and_a_table_and_a_name_is_no_formula()
    {
        await using var app = new AppFactory();
        var host = await app.HostAsync();
        await app.Get<AuditLog>().WriteAsync(AuditDeed.GuestPutOut, "=1+1", "10.0.0.7", "<b>bold</b>\r\nforged");

        var page = await host.ReadAsync("/account/log");
        var table = await host.ReadAsync("/account/log.csv");

        Assert.Contains("&lt;b&gt;bold", page, StringComparison.Ordinal);
        Assert.Contains("'=1+1", table, StringComparison.Ordinal);
        Assert.DoesNotContain(",=1+1", table, StringComparison.Ordinal);
        Assert.Contains("10.0.0.7", table, StringComparison.Ordinal);
        Assert.Contains(await RowsAsync(app), row => row is { Deed: AuditDeed.Exported, About: "this log" });
    }

    [Fact]
    public async Task Lines_are_dropped_when_their_time_is_over()
    {
        await using var app = new AppFactory();
        await app.HostAsync();
        var log = app.Get<AuditLog>();

        app.Clock.Leap(AuditLog.Kept);
        await log.WriteAsync(AuditDeed.SettingsChanged, "Rowan", address: null);
        var kept = await RowsAsync(app);
        app.Clock.Leap(TimeSpan.FromMinutes(1));
        await log.WriteAsync(AuditDeed.SettingsChanged, "Rowan", address: null);

        Assert.Contains(kept, row => row.Deed == AuditDeed.HostAdded);
        Assert.DoesNotContain(await RowsAsync(app), row => row.Deed == AuditDeed.HostAdded);
    }

    [Fact]
    public void Deeds_are_stored_as_they_always_were()
    {
        string[] frozen =
        [
            "SignedIn", "SignInRefused", "SignedOut", "PasswordChanged", "PasswordChangeRefused", "PasskeyAdded", "PasskeyRemoved", "SessionEnded", "HostInvited", "HostAdded", "HostRemoved",
            "JoinCodeMade", "GuestJoined", "JoinRefused", "GuestPutOut", "SettingsChanged", "BackupMade", "BackupFailed", "Restored", "Exported", "Imported",
            "TokenMade", "TokenRevoked",
        ];
        Assert.Equal(frozen.Order(), Enum.GetNames<AuditDeed>().Order());
    }

    static async Task<List<AuditRow>> RowsAsync(AppFactory app)
    {
        await using var db = app.NewDb();
        return await db.Set<AuditRow>().OrderBy(row => row.Id).ToListAsync(Stop);
    }
}
