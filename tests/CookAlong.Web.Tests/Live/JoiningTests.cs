using System.Net;
using System.Security.Cryptography;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Live;

public sealed class JoiningTests
{
    [Fact]
    public async Task A_scanned_secret_opens_the_door_as_a_typed_code_does()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var invitation = await kitchen.InviteAsync();
        using var scanned = await LiveKitchen.TryJoinAsync(kitchen.House.NewBrowser(), invitation.Secret, "Ivo");
        Assert.Equal($"/cook/{kitchen.Run}/me", scanned.Headers.Location!.OriginalString);
        using var typed = await LiveKitchen.TryJoinAsync(kitchen.House.NewBrowser(), $" {invitation.Typed[..4].ToLowerInvariant()}-{invitation.Typed[4..]}", "Tobi");
        Assert.Equal(HttpStatusCode.Redirect, typed.StatusCode);
    }

    [Fact]
    public async Task A_code_is_good_once()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var invitation = await kitchen.InviteAsync();
        using var first = await LiveKitchen.TryJoinAsync(kitchen.House.NewBrowser(), invitation.Typed, "Ivo");
        using var second = await LiveKitchen.TryJoinAsync(kitchen.House.NewBrowser(), invitation.Typed, "Tobi");
        Assert.Equal(HttpStatusCode.Forbidden, second.StatusCode);
    }

    [Fact]
    public async Task A_code_is_good_for_ten_minutes()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var invitation = await kitchen.InviteAsync();
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(10));
        using var late = await LiveKitchen.TryJoinAsync(kitchen.House.NewBrowser(), invitation.Typed, "Ivo");
        Assert.Equal(HttpStatusCode.Forbidden, late.StatusCode);
    }

    [Fact]
    public async Task A_name_that_is_taken_does_not_use_up_the_code()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.JoinAsync("Ivo");
        var invitation = await kitchen.InviteAsync();
        var phone = kitchen.House.NewBrowser();
        using var taken = await LiveKitchen.TryJoinAsync(phone, invitation.Typed, "IVO");
        Assert.Equal(HttpStatusCode.Conflict, taken.StatusCode);
        using var other = await LiveKitchen.TryJoinAsync(phone, invitation.Typed, "Anouk");
        Assert.Equal(HttpStatusCode.Redirect, other.StatusCode);
        Assert.Contains((await kitchen.LoadAsync()).People.Values, person => person is { Name: "Anouk", Helper.Value: "walk-in-1" });
    }

    [Fact]
    public async Task Five_wrong_codes_a_minute_from_one_address_close_the_door_for_it()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var invitation = await kitchen.InviteAsync();
        var phone = kitchen.House.NewBrowser();
        for (var wrong = 0; wrong < 5; wrong++)
        {
            using var answer = await LiveKitchen.TryJoinAsync(phone, "ABCDEFGH", "Ivo");
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        using var closed = await LiveKitchen.TryJoinAsync(phone, invitation.Typed, "Ivo");
        Assert.Equal(HttpStatusCode.TooManyRequests, closed.StatusCode);
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(1));
        using var open = await LiveKitchen.TryJoinAsync(phone, invitation.Typed, "Ivo");
        Assert.Equal(HttpStatusCode.Redirect, open.StatusCode);
    }

    [Fact]
    public async Task Twenty_wrong_codes_kill_a_typed_code_but_not_a_scanned_one()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var invitation = await kitchen.InviteAsync();
        var codes = kitchen.House.Get<CookAlong.Web.Features.Live.Door.JoinCodes>();
        for (var wrong = 0; wrong < 20; wrong++)
        {
            Assert.Null(await codes.FindAsync("ABCDEFGH"));
        }

        Assert.Null(await codes.FindAsync(invitation.Typed));
        Assert.NotNull(await codes.FindAsync(invitation.Secret));
    }

    [Fact]
    public async Task Codes_are_not_kept_in_the_clear()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var invitation = await kitchen.InviteAsync();
        await using var db = kitchen.House.NewDb();
        var rows = await db.Set<JoinCodeRow>().ToListAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, rows.Count);
        Assert.DoesNotContain(rows, row => row.Hash.Contains(invitation.Typed, StringComparison.OrdinalIgnoreCase) || row.Hash.Contains(invitation.Secret, StringComparison.OrdinalIgnoreCase));
        Assert.Equal(16, System.Buffers.Text.Base64Url.DecodeFromChars(invitation.Secret).Length);
    }

    [Fact]
    public async Task A_typed_code_is_kept_by_a_slow_hash_with_the_run_s_own_salt()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var (first, second) = (await kitchen.InviteAsync(), await kitchen.InviteAsync());
        var elsewhere = await kitchen.House.Get<CookAlong.Web.Features.Live.Door.JoinCodes>().InviteAsync(new RunId(LiveKitchen.NewCommand()), Role.Helper);
        await using var db = kitchen.House.NewDb();
        var kept = await db.Set<JoinCodeRow>().Where(row => row.IsTyped).ToListAsync(TestContext.Current.CancellationToken);
        var salts = kept.ToLookup(row => row.Run == kitchen.Run, row => row.Hash.Split('.')[0]);

        Assert.Equal((2, 1), (salts[true].Count(), salts[false].Count()));
        var (own, others) = (salts[true].Distinct().Single(), salts[false].Single());
        Assert.NotEqual(own, others);
        Assert.Equal(16, Convert.FromHexString(own).Length);
        foreach (var (code, salt) in new[] { (first, own), (second, own), (elsewhere, others) })
        {
            var slow = Convert.ToHexString(Rfc2898DeriveBytes.Pbkdf2(code.Typed, Convert.FromHexString(salt), 210_000, HashAlgorithmName.SHA512, 32));
            Assert.Contains(kept, row => row.Hash == $"{salt}.{slow}");
            Assert.Equal(code.Expires.ToUnixTimeMilliseconds(), (await kitchen.House.Get<CookAlong.Web.Features.Live.Door.JoinCodes>().FindAsync(code.Typed))!.Expires);
        }
    }

    [Fact]
    public async Task A_typed_code_kept_by_the_quick_hash_of_earlier_versions_opens_nothing()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await kitchen.InviteAsync();
        await using var db = kitchen.House.NewDb();
        db.Add(new JoinCodeRow
        {
            Id = LiveKitchen.NewCommand(),
            Run = kitchen.Run,
            Hash = Convert.ToHexString(SHA256.HashData("QUICKONE"u8)),
            IsTyped = true,
            Role = Role.Helper,
            Expires = kitchen.House.Clock.GetUtcNow().AddMinutes(10).ToUnixTimeMilliseconds(),
        });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);

        Assert.Null(await kitchen.House.Get<CookAlong.Web.Features.Live.Door.JoinCodes>().FindAsync("QUICKONE"));
    }

    [Fact]
    public async Task A_watchers_code_makes_a_watcher_whatever_the_name()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var gran = await kitchen.JoinAsync("Maren", Role.Watcher);
        Assert.False((await kitchen.TapAsync(gran, new { kind = "finishStep", step = "stuff" })).Accepted);
        using var board = await gran.GetAsync($"/cook/{kitchen.Run}");
        Assert.Equal(HttpStatusCode.OK, board.StatusCode);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("a name that is far longer than any name in this house")]
    public async Task Nobody_joins_without_a_name(string name)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var invitation = await kitchen.InviteAsync();
        using var answer = await LiveKitchen.TryJoinAsync(kitchen.House.NewBrowser(), invitation.Typed, name);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task The_host_s_page_makes_new_codes_and_guests_do_not_see_it()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        using var guest = await ivo.GetAsync($"/cook/{kitchen.Run}/invite");
        Assert.Equal(HttpStatusCode.Forbidden, guest.StatusCode);
        using var host = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}/invite");
        Assert.Equal(HttpStatusCode.OK, host.StatusCode);
    }

    [Fact]
    public async Task A_link_on_another_site_makes_no_code()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/cook/{kitchen.Run}/invite");
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        using var answer = await kitchen.Host.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal($"/cook/{kitchen.Run}", answer.Headers.Location?.OriginalString);
        await using var db = kitchen.House.NewDb();
        Assert.Empty(db.Set<JoinCodeRow>());
    }

    [Fact]
    public async Task The_host_puts_somebody_out_from_that_page_and_they_are_signed_out()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        var person = (await kitchen.LoadAsync()).People.Values.Single(one => one.Name == "Ivo").Person;
        using var answer = await kitchen.Host.PostFormAsync($"/cook/{kitchen.Run}/put-out", new() { ["person"] = person.ToString() }, page: $"/cook/{kitchen.Run}/invite");
        Assert.Contains("Ivo is out.", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.DoesNotContain((await kitchen.LoadAsync()).People.Values, one => one.Name == "Ivo");
        using var card = await ivo.GetAsync($"/cook/{kitchen.Run}/me");
        Assert.NotEqual(HttpStatusCode.OK, card.StatusCode);
        using var again = await kitchen.Host.PostFormAsync($"/cook/{kitchen.Run}/put-out", new() { ["person"] = person.ToString() }, page: "/join");
        Assert.Contains("out already", await again.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_but_a_host_puts_anybody_out_and_only_from_a_page_of_this_house()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var tobi = await kitchen.JoinAsync("Tobi");
        var ivo = await kitchen.JoinAsync("Ivo");
        var person = (await kitchen.LoadAsync()).People.Values.Single(one => one.Name == "Ivo").Person.ToString();
        using var guest = await tobi.PostFormAsync($"/cook/{kitchen.Run}/put-out", new() { ["person"] = person }, page: "/join");
        Assert.Equal(HttpStatusCode.Forbidden, guest.StatusCode);
        using var bare = await kitchen.Host.PostAsync($"/cook/{kitchen.Run}/put-out", new() { ["person"] = person });
        Assert.Equal(HttpStatusCode.BadRequest, bare.StatusCode);
        using var card = await ivo.GetAsync($"/cook/{kitchen.Run}/me");
        Assert.Equal(HttpStatusCode.OK, card.StatusCode);
    }

    [Fact]
    public async Task A_host_of_another_name_leaves_the_plan_s_names_free_and_can_take_and_tick_everything()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        Assert.Null(Assert.Single((await kitchen.LoadAsync()).People.Values).Helper);
        await kitchen.JoinAsync("Maren");
        await kitchen.JoinAsync("Ivo");
        using var card = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}/me");
        Assert.Equal(HttpStatusCode.OK, card.StatusCode);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" })).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "claimStep", step = "roll" })).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "letGoStep", step = "roll" })).Accepted);
    }
}
