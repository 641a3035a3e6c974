using System.Data.Common;
using System.Text.Json;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Outward;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using static CookAlong.Web.Tests.Live.OutwardKitchen;

namespace CookAlong.Web.Tests.Live;

/// <summary>A call that is to go out is claimed by one server at a time, and by another where that one dies.</summary>
public sealed class OutwardClaimsTests
{
    // Only for a test that fails.
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_delivery_that_a_dead_server_had_claimed_is_sent_by_the_next_within_five_seconds()
    {
        using var hook = new Receiver();
        await using var kitchen = await StartAsync(hook);
        await RoastIsDueAsync(kitchen);
        var deliveries = kitchen.House.Get<Deliveries>();
        var run = await kitchen.LoadAsync();
        var board = Domain.Runs.Board.Of(run, kitchen.House.Clock.GetUtcNow());
        await deliveries.NoteAsync(run, board, board.Calls.Single(call => call.Id.Value == "in:roast"), ["elsewhere"], Stop);
        var now = kitchen.House.Clock.GetUtcNow();

        Assert.Contains(await deliveries.ClaimAsync(now, Stop), row => row.Way == "elsewhere");
        var next = Another(kitchen);
        Assert.DoesNotContain(await next.ClaimAsync(now.AddSeconds(3), Stop), row => row.Way == "elsewhere");
        // And a second until it looks.
        Assert.Contains(await next.ClaimAsync(now.AddSeconds(4), Stop), row => row.Way == "elsewhere");
    }

    [Fact]
    public async Task A_receiver_that_is_slow_gets_nothing_twice_while_the_server_that_sends_is_alive()
    {
        using var hook = new Receiver { Holds = new() };
        await using var kitchen = await StartAsync(hook);
        await UnansweredAsync(kitchen, hook);
        var first = Calls(hook.Came[0].Body);
        var (next, clock) = (Another(kitchen), kitchen.House.Clock);
        for (var second = 0; second < 12; second++)
        {
            clock.Advance(TimeSpan.FromSeconds(1));
            await UntilAsync(() => Held().All(until => until > clock.GetUtcNow().AddSeconds(3).ToUnixTimeMilliseconds())).WaitAsync(Patience, Stop);
            Assert.DoesNotContain(await next.ClaimAsync(clock.GetUtcNow(), Stop), row => first.Contains(row.Call));
        }

        hook.Holds.SetResult();
        await UntilAsync(() => Held().Count == 0).WaitAsync(Patience, Stop);
        Assert.Single(hook.Came, one => Calls(one.Body).Intersect(first).Any());

        List<long> Held()
        {
            using var db = kitchen.House.NewDb();
            return [.. db.Set<DeliveryRow>().Where(row => first.Contains(row.Call) && row.DoneAt == null).Select(row => row.NextAt)];
        }

        static List<string> Calls(byte[] body)
        {
            using var json = JsonDocument.Parse(body);
            return [.. json.RootElement.GetProperty("calls").EnumerateArray().Select(call => call.GetProperty("call").GetString()!)];
        }
    }

    [Fact]
    public async Task What_was_claimed_as_the_database_went_away_is_claimed_again()
    {
        var failing = new FailsAtTheSecond();
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.ConfigureDbContext<CookAlongDb>(options => options.AddInterceptors(failing)));
        var deliveries = kitchen.House.Get<Deliveries>();
        var run = await kitchen.LoadAsync();
        var board = Domain.Runs.Board.Of(run, kitchen.House.Clock.GetUtcNow());
        await deliveries.NoteAsync(run, board, board.Calls[0], ["one", "two"], Stop);

        failing.IsOn = true;
        await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() => deliveries.ClaimAsync(board.At, Stop));
        failing.IsOn = false;

        Assert.Equal(2, (await deliveries.ClaimAsync(board.At.AddSeconds(4), Stop)).Count);
    }

    /// <summary>A database that goes away between two changes.</summary>
    sealed class FailsAtTheSecond : DbCommandInterceptor
    {
        int changes;

        public bool IsOn { get; set; }

        public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default) =>
            IsOn && ++changes == 2 ? throw new Microsoft.Data.Sqlite.SqliteException("disk I/O error", 10) : ValueTask.FromResult(result);
    }

    /// <summary>Another server's, on the same store.</summary>
    static Deliveries Another(LiveKitchen kitchen) => new(kitchen.House.Get<IDbContextFactory<CookAlongDb>>());
}
