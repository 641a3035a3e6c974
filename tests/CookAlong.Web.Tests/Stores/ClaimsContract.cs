using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Calls;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Stores;

public sealed class ClaimsOnSqlite() : ClaimsContract(Store.Sqlite);

public sealed class ClaimsOnPostgres() : ClaimsContract(Store.Postgres);

/// <summary>A call is sent, and goes out of the house, by one server alone, and by another when that one died.</summary>
public abstract class ClaimsContract(Store store)
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_due_call_is_claimed_by_one_server_only()
    {
        await using var kitchen = await store.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();
        DueCalls[] servers = [kitchen.House.Get<DueCalls>(), other.House.Get<DueCalls>()];
        var run = await kitchen.LoadAsync();
        // Not those that the servers ring by themselves meanwhile.
        foreach (var call in CallSchedule.Of(run, Clock(12, 20)).Where(call => call.Due > Clock(12, 21)))
        {
            var claims = await Task.WhenAll(servers.Concat(servers).Select(server => Task.Run(() => server.ClaimAsync(run.Id, call, Clock(14, 10)))));
            Assert.Equal([Claim.Mine, Claim.Others, Claim.Others, Claim.Others], claims.Order());
            await servers[0].RungAsync(run.Id, call.Id, Clock(14, 10));
            Assert.Equal(Claim.Rung, await servers[1].ClaimAsync(run.Id, call, Clock(14, 20)));
        }
    }

    [Fact]
    public async Task A_call_whose_server_died_before_sending_it_is_sent_by_the_next()
    {
        await using var kitchen = await store.KitchenAsync();
        var calls = kitchen.House.Get<DueCalls>();
        var run = await kitchen.LoadAsync();
        var call = CallSchedule.Of(run, Clock(12, 20)).Single(call => call.Id == new CallId("out:roast"));
        Assert.Equal(Claim.Mine, await calls.ClaimAsync(run.Id, call, Clock(14, 10)));
        Assert.Equal(Claim.Others, await calls.ClaimAsync(run.Id, call, Clock(14, 10).AddSeconds(3)));
        Assert.Equal(Claim.Mine, await calls.ClaimAsync(run.Id, call, Clock(14, 10).AddSeconds(4)));
    }

    [Fact]
    public async Task What_is_to_go_out_is_written_once_and_claimed_once_at_a_time()
    {
        await using var kitchen = await store.KitchenAsync();
        await using var other = await kitchen.RestartedAsync();
        Deliveries[] servers = [kitchen.House.Get<Deliveries>(), other.House.Get<Deliveries>()];
        var run = await kitchen.LoadAsync();
        var board = kitchen.House.Get<Boards>().NewOf(run);
        var call = board.Calls[0];
        await Task.WhenAll(servers.Select(server => Task.Run(() => server.NoteAsync(run, board, call, ["webhook", "mqtt"], Stop))));

        var claimed = await Task.WhenAll(servers.Select(server => Task.Run(() => server.ClaimAsync(board.At, Stop))));
        Assert.Equal(["mqtt", "webhook"], claimed.SelectMany(rows => rows).Select(row => row.Way).Order());
        var next = new Deliveries(other.House.Get<IDbContextFactory<CookAlongDb>>());
        Assert.Empty(await next.ClaimAsync(board.At.AddSeconds(3), Stop));

        // Nobody has marked or renewed them: whoever claimed them has died.
        var again = await next.ClaimAsync(board.At.AddSeconds(4), Stop);
        Assert.Equal(2, again.Count);
        Assert.False(await servers[0].RenewAsync(claimed.SelectMany(rows => rows).First(), board.At.AddSeconds(4), Stop));
        await next.DoneAsync(again[0], board.At, why: null, Stop);

        // Who has it still holds it, and does not claim it from himself.
        Assert.True(await next.RenewAsync(again[1], board.At.AddSeconds(7), Stop));
        Assert.Empty(await new Deliveries(other.House.Get<IDbContextFactory<CookAlongDb>>()).ClaimAsync(board.At.AddSeconds(10), Stop));
        Assert.Empty(await next.ClaimAsync(board.At.AddSeconds(60), Stop));
        next.LetGo(again);
        Assert.Equal(again[1].Way, Assert.Single(await next.ClaimAsync(board.At.AddSeconds(60), Stop)).Way);
    }
}
