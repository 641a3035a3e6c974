using System.Data.Common;
using System.Net;
using System.Net.Http.Json;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Tests.Api;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Live;

/// <summary>What a kitchen does when the machine under it fails: what was accepted is in the log, what was not can be sent again.</summary>
public sealed class FaultTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("max_page_count = 1")] // SQLite's own "database or disk is full".
    [InlineData("query_only = ON")] // and "attempt to write a readonly database".
    public async Task A_full_or_read_only_disk_loses_nothing_that_was_accepted(string pragma)
    {
        var disk = new Disk();
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.ConfigureDbContext<CookAlongDb>(options => options.AddInterceptors(disk)));
        var program = await Programs.WithAsync(kitchen.House, kitchen.Host, "runs:read");
        disk.Pragma = pragma;
        var accepted = 0;
        Guid failed;
        while (true)
        {
            // Small changes fit into what the file has left, for a while.
            failed = LiveKitchen.NewCommand();
            var sent = await SendAsync(kitchen, failed, accepted);
            if (!sent)
            {
                break;
            }

            Assert.True(++accepted < 500);
        }

        // Long enough for when a browser was last seen, and a token last used, to be due to be written.
        kitchen.House.Clock.Leap(TimeSpan.FromMinutes(6));
        using (var board = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}"))
        {
            Assert.Equal(HttpStatusCode.OK, board.StatusCode);
        }

        await program.GetAsync("/api/v1/runs");
        disk.Pragma = null;
        var before = (await kitchen.LoadAsync()).Sequence;
        Assert.True(await SendAsync(kitchen, failed, accepted));
        Assert.True(await SendAsync(kitchen, failed, accepted));
        var run = await kitchen.LoadAsync();
        Assert.Equal(before + 1, run.Sequence);
        Assert.Equal(accepted + 1, run.OvenReadings.Values.Single().Length);
    }

    /// <returns>False when the server says that it failed.</returns>
    static async Task<bool> SendAsync(LiveKitchen kitchen, Guid command, int number)
    {
        using var answer = await kitchen.Host.PostJsonAsync(
            $"/cook/{kitchen.Run}/taps", new { runId = kitchen.Run, commandId = command, saw = 0, command = new { kind = "readOven", oven = "oven", celsius = 20 + (number % 100) } });
        if (answer.StatusCode == HttpStatusCode.InternalServerError)
        {
            return false;
        }

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.True((await answer.Content.ReadFromJsonAsync<TapAnswer>(Stop))!.Accepted);
        return true;
    }

    [Fact]
    public async Task A_server_whose_database_fails_at_its_start_goes_on_with_what_is_cooked_as_soon_as_it_does_not()
    {
        var disk = new Disk();
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.ConfigureDbContext<CookAlongDb>(options => options.AddInterceptors(disk)));
        disk.IsGone = true;
        await using var again = kitchen.House.Again();
        again.StartServer();
        await Looked(again, "could not be read");

        disk.IsGone = false;
        // The oven was to be turned on at 12:20.
        await Looked(again, "called dial:oven");

        static async Task Looked(AppFactory house, string says)
        {
            for (var second = 0; second < 600 && !house.Log.Any(line => line.Contains(says, StringComparison.Ordinal)); second++)
            {
                house.Clock.Advance(TimeSpan.FromSeconds(1));
                await Task.Delay(100, Stop);
            }

            Assert.Contains(house.Log, line => line.Contains(says, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_tap_waits_for_a_database_that_another_process_has_locked()
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        await using var other = new SqliteConnection($"Data Source={Path.Combine(kitchen.House.DataFolder, "cookalong.db")};Pooling=False");
        await other.OpenAsync(Stop);
        await using var hold = other.CreateCommand();
        hold.CommandText = "BEGIN IMMEDIATE";
        await hold.ExecuteNonQueryAsync(Stop);

        var sent = SendAsync(kitchen, LiveKitchen.NewCommand(), 1);
        using (var board = await kitchen.Host.GetAsync($"/cook/{kitchen.Run}"))
        {
            Assert.Equal(HttpStatusCode.OK, board.StatusCode);
        }

        hold.CommandText = "ROLLBACK";
        await hold.ExecuteNonQueryAsync(Stop);

        Assert.True(await sent);
        Assert.Single((await kitchen.LoadAsync()).OvenReadings.Values.Single());
    }

    [Theory]
    [InlineData(-120)]
    [InlineData(600)]
    public async Task A_clock_that_jumps_loses_no_tap_and_the_log_stays_in_order(int minutes)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        Assert.True(await SendAsync(kitchen, LiveKitchen.NewCommand(), 1));
        kitchen.House.Clock.AdjustTime(kitchen.House.Clock.GetUtcNow().AddMinutes(minutes));
        Assert.True(await SendAsync(kitchen, LiveKitchen.NewCommand(), 2));
        kitchen.House.Clock.AdjustTime(kitchen.House.Clock.GetUtcNow().AddMinutes(-minutes));
        Assert.True(await SendAsync(kitchen, LiveKitchen.NewCommand(), 3));

        Assert.Equal([21, 22, 23], (await kitchen.LoadAsync()).OvenReadings.Values.Single().Select(one => one.Celsius));
        Assert.Contains("23 °C", WebUtility.HtmlDecode(await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}")), StringComparison.Ordinal);
    }

    /// <summary>A disk as SQLite sees it, from the next opening of the database on.</summary>
    sealed class Disk : DbConnectionInterceptor
    {
        public string? Pragma { get; set; }

        /// <summary>Not even to be opened.</summary>
        public bool IsGone { get; set; }

        public override ValueTask<InterceptionResult> ConnectionOpeningAsync(DbConnection connection, ConnectionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default) =>
            IsGone ? throw new SqliteException("disk I/O error", 10) : ValueTask.FromResult(result);

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Set(connection);

        public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            Set(connection);
            return Task.CompletedTask;
        }

        void Set(DbConnection connection)
        {
            using var command = connection.CreateCommand();
            command.CommandText = Pragma switch
            {
                null => "PRAGMA max_page_count = 1073741823; PRAGMA query_only = OFF",
                "query_only = ON" => "PRAGMA query_only = ON",
                _ => "PRAGMA max_page_count = 1",
            };
            command.ExecuteNonQuery();
        }
    }
}
