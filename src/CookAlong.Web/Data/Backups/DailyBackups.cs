using CookAlong.Web.Features.Household.Audit;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Data.Backups;

/// <summary>Backs the household up every day, and drops the daily backups that are not kept any longer.</summary>
sealed class DailyBackups(HouseSettings settings, Backup backup, IDbContextFactory<CookAlongDb> databases, TimeProvider time, ILogger<DailyBackups> log) : BackgroundService
{
    static readonly TimeSpan Beat = TimeSpan.FromMinutes(10);

    // Somebody who goes on cooking taps now and then; a run that nobody ended is no reason to wait for ever.
    static readonly TimeSpan StillCooking = TimeSpan.FromHours(6);

    // A full disk is full for a while: the log is not filled too.
    static readonly TimeSpan AfterFailure = TimeSpan.FromHours(1);

    readonly AuditLog audit = new(databases, time);

    /// <summary>The last try, where it failed; null after a good one.</summary>
    public BackupFailure? Failure { get; private set; }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var clock = new PeriodicTimer(Beat, time);
        do
        {
            try
            {
                await LookAsync(stoppingToken);
            }
            catch (Exception failure) when (!stoppingToken.IsCancellationRequested)
            {
                // The last resort of a loop that must not stop.
                log.LogError(failure, "Whether a backup is due could not be told; the next look is in {Minutes} min.", Beat.TotalMinutes);
            }
        }
        while (await clock.WaitForNextTickAsync(stoppingToken));
    }

    /// <summary>One look: makes the backup that is due.</summary>
    /// <returns>Whether one was made.</returns>
    public async Task<bool> LookAsync(CancellationToken stop)
    {
        var now = time.GetUtcNow();
        if (Failure is { } failed && now - failed.At < AfterFailure)
        {
            return false;
        }

        var last = KeptBackup.LastGoodIn(settings.Backups)?.Made ?? await BeganAsync(stop);
        if (last is not { } since || !BackupHour.IsDue(now, since, await IsCookingAsync(now, stop), time.LocalTimeZone))
        {
            return false;
        }

        var file = backup.NextFile(KeptBackup.Daily);
        try
        {
            await Task.Run(() => backup.To(file), stop);
            Failure = null;
            await audit.WriteAsync(AuditDeed.BackupMade, "CookAlong, daily", address: null, Path.GetFileName(file));
            log.LogInformation("The daily backup is in {File}.", file);
            DropOld();
            return true;
        }
        catch (BackupException failure)
        {
            Failure = new BackupFailure(now, failure.Message);
            log.LogError(failure, "The daily backup failed. {Message} The next try is in {Minutes} min.", failure.Message, AfterFailure.TotalMinutes);
            await audit.WriteAsync(AuditDeed.BackupFailed, "CookAlong, daily", address: null);
            return false;
        }
    }

    void DropOld()
    {
        var daily = KeptBackup.AllIn(settings.Backups).Where(one => one.Why == KeptBackup.Daily).ToArray();
        var kept = Retention.Kept(daily.Where(one => one.Manifest is not null).Select(one => one.Made));
        try
        {
            foreach (var old in daily.Where(one => !kept.Contains(one.Made)))
            {
                old.Delete();
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            log.LogWarning(failure, "An old backup could not be removed from {Folder}.", settings.Backups);
        }
    }

    async Task<bool> IsCookingAsync(DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var from = (now - StillCooking).ToUnixTimeMilliseconds();
        return await db.Set<RunRow>()
            .Where(run => run.Ended == null)
            .AnyAsync(run => db.Set<RunEventRow>().Any(happened => happened.Run == run.Id && happened.At >= from), stop);
    }

    /// <summary>When its first host came; null before.</summary>
    async Task<DateTimeOffset?> BeganAsync(CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var first = await db.Sessions.Where(session => session.Run == null).MinAsync(session => (long?)session.BeganAt, stop);
        return first is { } at ? DateTimeOffset.FromUnixTimeMilliseconds(at) : null;
    }
}

/// <param name="Message">Names the file and what to do.</param>
public sealed record BackupFailure(DateTimeOffset At, string Message);
