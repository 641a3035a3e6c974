using CookAlong.Web.Data.Backups;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Health;

/// <summary>What a check says, in words for the host: what is, and what to do.</summary>
static class HealthWords
{
    public static Finding NoZones { get; } = Wrong("Clock", "This machine knows no time zones, so no meal's time can be shown. Install the package with the time zones (tzdata).");

    public static Finding NoFolder(string folder) => Heed("Folder", $"{folder} is not there yet; the first start makes it.");

    public static Finding NotWritable(string folder, string why) => Wrong("Folder", $"{folder} cannot be written: {why} Give it to the user that the server runs as.");

    public static Finding Open(string folder) => Wrong("Folder", $"Others on this machine can look into {folder}, which holds password hashes and keys. Close it: chmod go-rwx {folder}");

    public static Finding Closed(string folder) => Well("Folder", $"{folder} can be written, and only by its own user looked into.");

    public static Finding OnNetwork(string folder, string kind) => Wrong("File system", $"{folder} lies on a network file system ({kind}), where SQLite can damage a database. Move it to a disk of this machine; only backups may lie on the network.");

    public static Finding Local(string folder, string kind) => Well("File system", $"{folder} lies on this machine ({kind}).");

    public static Finding UnknownFileSystem(string folder) => Heed("File system", $"Whether {folder} lies on a network could not be told here; it must not.");

    public static Finding Room(string folder, long free) => Well("Disk", $"{BackupWords.Size(free)} are free at {folder}.");

    public static Finding NoRoom(string folder, long free, long needed) => Wrong("Disk", $"Only {BackupWords.Size(free)} are free at {folder}; updates and backups need {BackupWords.Size(needed)}. Make room there.");

    public static Finding NoDatabase(string folder, bool isRestoring) => isRestoring
        ? Wrong("Database", $"A restore into {folder} was cut off. Run 'restore' once more.")
        : Heed("Database", $"There is no household in {folder} yet; the first start makes it.");

    public static Finding Foreign(string file) => Wrong("Database", $"{file} is not a database of CookAlong. Move it away, or name another folder with --data.");

    public static Finding Damaged(string file, string what) => Wrong("Database", $"{file} is damaged: {what}. Stop the server, and go back to the last good backup with 'restore'.");

    public static Finding Shut(string file, string why) => Wrong("Database", $"{file} cannot be opened: {why}. Run this as the user that the server runs as.");

    public static Finding NothingToReach { get; } = Well("Ways out", "No device has asked for calls while its page is closed, and no receiver is set: there is nothing to reach.");

    public static Finding BackupsOfPostgres { get; } = Heed("Backups", BackupWords.OfPostgres);

    public static Finding PostgresAnswers(string version, int behind) => behind == 0
        ? Well("Database", $"PostgreSQL {version} answers, and is as this version of the program wants it.")
        : Heed("Database", $"PostgreSQL {version} answers; it is {MealWords.Many(behind, "step", "steps")} behind this version of the program, and the next start brings it up to date.");

    public static Finding PostgresAway(string why) => Wrong("Database", $"PostgreSQL does not answer: {why.TrimEnd('.')}. Look at COOKALONG_POSTGRES and at the database.");

    public static Finding Sound(long bytes) => Well("Database", $"The database is sound, {BackupWords.Size(bytes)}.");

    public static Finding Unfit(string file, string fault) => Wrong("Schema", $"{file} {fault}");

    public static Finding Fits(int behind) => behind == 0
        ? Well("Schema", "The database is as this version of the program wants it.")
        : Heed("Schema", $"The database is {MealWords.Many(behind, "step", "steps")} behind this version of the program; the next start brings it up to date, after a backup.");

    public static Finding Clock(DateTimeOffset now, TimeZoneInfo zone) => Well("Clock", $"By this machine's clock it is {BackupWords.At(now, zone)} ({zone.Id}).");

    public static Finding ClockBehind(DateTimeOffset now, DateTimeOffset written) => Wrong(
        "Clock",
        $"This machine's clock says {BackupWords.At(now, TimeZoneInfo.Utc)}, but something was written down at {BackupWords.At(written, TimeZoneInfo.Utc)}. Set the clock, by the network if you can: calls would come at the wrong time.");

    public static Finding NoBackup(string folder, bool isNew) => isNew
        ? Heed("Backups", $"There is no good backup in {folder} yet; the first is made within a day.")
        : Wrong("Backups", $"There is no good backup in {folder}. The server's log says why; 'backup' makes one now.");

    public static Finding Backup(KeptBackup last, DateTimeOffset now, TimeZoneInfo zone) => BackupWords.IsStale(last, now)
        ? Wrong("Backups", $"The last good backup is old: {BackupWords.Of(last, now, zone)}. The server's log says why there is no newer one; 'backup' makes one now.")
        : Well("Backups", $"Last good backup: {BackupWords.Of(last, now, zone)}.");

    public static Finding BackupChanged(string file) => Wrong("Backups", $"{file} is not what was backed up: it was changed or damaged since. Look at the disk; 'backup' makes a new one.");

    public static Finding Https(bool isOn, bool isOnly) => !isOn
        ? Heed("HTTPS", "This household has no HTTPS of its own: whoever is in the same network can read along, unless a proxy sees to it. 'https on' brings it.")
        : isOnly ? Well("HTTPS", "Everything goes over HTTPS; plain HTTP answers nothing but the page that installs the household's authority.")
        : Heed("HTTPS", "HTTPS is on, and plain HTTP is answered beside it. Once every device trusts this kitchen, --https-only yes (COOKALONG_HTTPS_ONLY) ends that.");

    public static Finding Free(string url) => Well("Address", $"{url} is free to listen on.");

    public static Finding Ours(string url) => Well("Address", $"The server answers at {url}.");

    public static Finding TakenBySomebody(string url) => Heed("Address", $"Something listens at {url}; whether it is this server is not looked into over HTTPS.");

    public static Finding Taken(string url) => Wrong("Address", $"Another program listens at {url}. Stop it, or choose another port with --urls.");

    public static Finding Reached(string host, string? whyNot) => whyNot is null
        ? Well("Ways out", $"{host} can be reached.")
        : Wrong("Ways out", $"{host} cannot be reached: {whyNot.TrimEnd('.')}. Calls that nobody answers do not get there; look at the machine's network and name server.");

    static Finding Well(string of, string says) => new(of, Grade.Well, says);

    static Finding Heed(string of, string says) => new(of, Grade.Heed, says);

    static Finding Wrong(string of, string says) => new(of, Grade.Wrong, says);
}
