using System.Text;
using CookAlong.Web.Data;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Household;

/// <summary>The household's host cooks, by name and password.</summary>
public sealed class Accounts(IDbContextFactory<CookAlongDb> databases, HouseSettings settings, IPasswordHasher<HostRow> hasher, TimeProvider time)
{
    public const int LongestName = 60;

    // Verified against when no such name exists, so that the answer takes as long either way.
    readonly Lazy<string> nobodysHash = new(() => hasher.HashPassword(null!, "nobody has this password"));

    public async Task<bool> AnyAsync(CancellationToken stop = default)
    {
        if (settings.Postgres is not null)
        {
            await using var db = await databases.CreateDbContextAsync(stop);
            return await db.Hosts.AnyAsync(stop);
        }

        // Asked before the server listens, when the first use of EF would cost half a second.
        await using var connection = HouseholdData.Connection(settings.Database);
        await connection.OpenAsync(stop);
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT EXISTS (SELECT 1 FROM Hosts)";
        return await command.ExecuteScalarAsync(stop) is 1L;
    }

    /// <returns>The new account, or what is wrong with what was typed.</returns>
    public async Task<(HostRow? Host, AccountFault? Fault)> CreateAsync(string name, string password, CancellationToken stop = default)
    {
        name = name.Trim();
        if (name.Length is 0 or > LongestName)
        {
            return (null, new AccountFault.Name());
        }

        if (Passwords.FaultOf(password, name) is { } weak)
        {
            return (null, new AccountFault.Password(weak));
        }

        var host = new HostRow { Id = Guid.CreateVersion7(time.GetUtcNow()), Name = name, NameKey = KeyOf(name), PasswordHash = "" };
        host.PasswordHash = hasher.HashPassword(host, password);
        await using var db = await databases.CreateDbContextAsync(stop);
        if (await db.Hosts.AnyAsync(other => other.NameKey == host.NameKey, stop))
        {
            return (null, new AccountFault.NameTaken());
        }

        db.Hosts.Add(host);
        await db.SaveChangesAsync(stop);
        return (host, null);
    }

    /// <summary>Null when name and password do not belong together; which of the two is wrong is not told.</summary>
    public async Task<HostRow?> FindAsync(string name, string password, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var key = KeyOf(name.Trim());
        var host = await db.Hosts.SingleOrDefaultAsync(one => one.NameKey == key, stop);
        var result = hasher.VerifyHashedPassword(host!, host?.PasswordHash ?? nobodysHash.Value, password);
        if (host is null || result == PasswordVerificationResult.Failed)
        {
            return null;
        }

        if (result == PasswordVerificationResult.SuccessRehashNeeded)
        {
            host.PasswordHash = hasher.HashPassword(host, password);
            await db.SaveChangesAsync(stop);
        }

        return host;
    }

    /// <summary>By name.</summary>
    public async Task<IReadOnlyList<HostRow>> AllAsync(CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Hosts.AsNoTracking().OrderBy(host => host.NameKey).ToListAsync(stop);
    }

    /// <returns>Null when it was changed, else why not.</returns>
    public async Task<AccountFault?> ChangePasswordAsync(string name, string current, string next, CancellationToken stop = default)
    {
        if (await FindAsync(name, current, stop) is not { } host)
        {
            return new AccountFault.WrongPassword();
        }

        if (Passwords.FaultOf(next, host.Name) is { } weak)
        {
            return new AccountFault.Password(weak);
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        var hash = hasher.HashPassword(host, next);
        await db.Hosts.Where(one => one.Id == host.Id).ExecuteUpdateAsync(set => set.SetProperty(one => one.PasswordHash, hash), stop);
        return null;
    }

    /// <summary>With their passkeys and the invitations they made. False for the last one, and for one who is gone.</summary>
    public async Task<bool> RemoveAsync(Guid host, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        // Counted in the statement that removes, so that two who remove each other cannot both succeed.
        return await db.Hosts.Where(one => one.Id == host && db.Hosts.Count() > 1).ExecuteDeleteAsync(stop) == 1;
    }

    static string KeyOf(string name) => name.Normalize(NormalizationForm.FormKC).ToUpperInvariant();
}

/// <summary>Why an account was not made.</summary>
public abstract record AccountFault
{
    /// <summary>Empty, or longer than <see cref="Accounts.LongestName"/>.</summary>
    public sealed record Name : AccountFault;

    public sealed record NameTaken : AccountFault;

    public sealed record Password(PasswordFault Fault) : AccountFault;

    public sealed record WrongSecret : AccountFault;

    /// <summary>The password that is to be changed was not given right.</summary>
    public sealed record WrongPassword : AccountFault;
}
