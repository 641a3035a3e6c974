using CookAlong.Benchmarks.Kitchens;
using CookAlong.Web.Cli;
using CookAlong.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Live;

/// <summary>The server as a process of its own on a small disk of its own, which is filled up and closed.</summary>
public sealed class RealDiskTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_disk_that_is_full_in_the_middle_of_a_run_loses_nothing_and_it_goes_on_when_there_is_room()
    {
        await using var kitchen = await KitchenProcess.StartAsync();
        var run = await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow());
        await using var disk = await MoveAsync(kitchen);
        await kitchen.RestartAsync();
        var accepted = new List<Guid> { NewId() };
        Assert.True(await SendAsync(kitchen, run, accepted[0]));

        disk.Fill();
        Guid failed;
        while (true)
        {
            // What SQLite has put aside for its log takes a few.
            failed = NewId();
            if (!await SendAsync(kitchen, run, failed))
            {
                break;
            }

            accepted.Add(failed);
            Assert.True(accepted.Count < 5_000);
        }

        Assert.Contains("data-sequence", await kitchen.Client.GetStringAsync($"/cook/{run}/board-part", Stop), StringComparison.Ordinal);

        disk.MakeRoom();
        Assert.True(await SendAsync(kitchen, run, failed));
        Assert.True(await SendAsync(kitchen, run, failed));
        await WrittenOnceAsync(kitchen, disk, run, [.. accepted, failed]);
    }

    [Fact]
    public async Task A_start_on_a_full_or_a_read_only_disk_names_the_folder_and_the_remedy_and_ends()
    {
        await using var kitchen = await KitchenProcess.StartAsync();
        var run = await kitchen.StartRunAsync(TimeProvider.System.GetUtcNow());
        Guid[] accepted = [NewId(), NewId()];
        Assert.True(await SendAsync(kitchen, run, accepted[0]));
        await using var disk = await MoveAsync(kitchen);

        disk.Fill();
        await EndsAsync(kitchen, $"The data folder {kitchen.Data} cannot be written: its disk is full. Make room there");
        disk.MakeRoom();

        await disk.CloseAsync();
        await EndsAsync(kitchen, $"The data folder {kitchen.Data} cannot be written: its disk is read-only.");
        await disk.OpenAsync();

        await kitchen.RestartAsync();
        Assert.True(await SendAsync(kitchen, run, accepted[1]));
        await WrittenOnceAsync(kitchen, disk, run, accepted);
    }

    /// <summary>The server is down after it.</summary>
    static async Task<OwnDisk> MoveAsync(KitchenProcess kitchen)
    {
        await kitchen.KillAsync();
        kitchen.Disk = await OwnDisk.TryStartAsync(kitchen.Data, megabytes: 24);
        Assert.SkipWhen(kitchen.Disk is null, "A disk of the test's own needs user namespaces (unshare and nsenter of util-linux), which are not to be had here.");
        return kitchen.Disk;
    }

    /// <summary>An exit that whatever restarts servers leaves alone: deploy/cookalong.service.</summary>
    static async Task EndsAsync(KitchenProcess kitchen, string says)
    {
        var (exit, said) = await kitchen.TryStartAsync();
        Assert.StartsWith(says, said, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Failed, exit);
    }

    /// <returns>False when the server says that it failed.</returns>
    static async Task<bool> SendAsync(KitchenProcess kitchen, Guid run, Guid id)
    {
        try
        {
            return (await kitchen.TapAsync(run, id, new { kind = "addTime", step = ManyDue.Job(1).Value, minutes = 1 })).Accepted;
        }
        catch (HttpRequestException failed) when (failed.StatusCode is System.Net.HttpStatusCode.InternalServerError)
        {
            return false;
        }
    }

    static async Task WrittenOnceAsync(KitchenProcess kitchen, OwnDisk disk, Guid run, Guid[] accepted)
    {
        await kitchen.KillAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        disk.BringOut();
        await using var db = kitchen.NewDb();
        var written = await db.Set<RunEventRow>().Where(row => row.Run == run && accepted.Contains(row.Command)).Select(row => row.Command).ToListAsync(Stop);
        Assert.Equal(accepted.Order(), written.Order());
    }

    static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
}
