using System.Net;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Door;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Tests.Live;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Stores;

public sealed class HouseholdOnSqlite() : HouseholdContract(Store.Sqlite);

public sealed class HouseholdOnPostgres() : HouseholdContract(Store.Postgres);

/// <summary>What two servers of one household share beyond its runs.</summary>
public abstract class HouseholdContract(Store store)
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_signed_in_at_one_server_is_signed_in_at_the_other()
    {
        await using var kitchen = await store.KitchenAsync();
        var sealed_ = kitchen.House.Get<IDataProtectionProvider>().CreateProtector("test").Protect("a goose");
        await using var other = await kitchen.RestartedAsync();

        Assert.Equal("a goose", other.House.Get<IDataProtectionProvider>().CreateProtector("test").Unprotect(sealed_));
    }

    [Fact]
    public async Task A_code_lets_in_once_whichever_server_is_asked()
    {
        await using var kitchen = await store.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();
        var invitation = await kitchen.InviteAsync();

        var answers = await Task.WhenAll(new[] { kitchen, other }.Select(async server =>
            (await server.House.Get<JoinCodes>().FindAsync(invitation.Typed)) is { } found && await server.House.Get<JoinCodes>().UseAsync(found)));

        Assert.Equal([false, true], answers.Order());
    }

    [Fact]
    public async Task The_key_of_its_notifications_is_one()
    {
        await using var kitchen = await store.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();

        var keys = await Task.WhenAll(new[] { kitchen, other }.Select(server => Task.Run(() => server.House.Get<PushKeys>().OfAsync(Stop))));

        Assert.Equal(keys[0].Public, keys[1].Public);
    }

    [Fact]
    public async Task Names_are_ordered_by_their_letters_codes() // The contract of both: SQLite's BINARY, PostgreSQL's "C".
    {
        await using var kitchen = await store.KitchenAsync();
        await using var db = kitchen.House.NewDb();
        foreach (var name in (string[])["b", "B", "ä", "a"])
        {
            db.Add(new HouseKeyRow { Name = $"test {name}", Value = "" });
        }

        await db.SaveChangesAsync(Stop);

        Assert.Equal(["B", "a", "b", "ä"], await db.Set<HouseKeyRow>().Where(row => row.Name.StartsWith("test ")).OrderBy(row => row.Name).Select(row => row.Name.Substring(5)).ToListAsync(Stop));
    }
}
