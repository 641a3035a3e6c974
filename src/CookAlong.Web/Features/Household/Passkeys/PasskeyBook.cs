using CookAlong.Web.Data;
using Fido2NetLib;
using Fido2NetLib.Objects;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Features.Household.Passkeys;

/// <summary>Hosts' passkeys: added, listed, removed, and signed in with.</summary>
public sealed class PasskeyBook(IDbContextFactory<CookAlongDb> databases, PasskeyChallenges challenges, TimeProvider time)
{
    public const int LongestName = 40;

    /// <summary>Of one host. A bound on work, not on taste.</summary>
    public const int Most = 20;

    public async Task<IReadOnlyList<PasskeyRow>> OfAsync(Guid host, CancellationToken stop = default)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<PasskeyRow>().AsNoTracking().Where(one => one.Host == host).OrderBy(one => one.AddedAt).ToListAsync(stop);
    }

    /// <summary>The name it had; null when this host has no such passkey.</summary>
    public async Task<string?> RemoveAsync(Guid host, Guid passkey)
    {
        await using var db = await databases.CreateDbContextAsync();
        var named = db.Set<PasskeyRow>().Where(one => one.Id == passkey && one.Host == host);
        var name = await named.Select(one => one.Name).SingleOrDefaultAsync();
        return await named.ExecuteDeleteAsync() == 1 ? name : null;
    }

    /// <summary>What the host's device is asked for, as the browser takes it.</summary>
    internal async Task<string> AskForNewAsync(PasskeyPlace place, Guid host, string hostName, Guid session)
    {
        var known = (await OfAsync(host)).Where(one => one.Place == place.Name);
        var options = place.Reader().RequestNewCredential(new RequestNewCredentialParams
        {
            User = new Fido2User { Id = host.ToByteArray(), Name = hostName, DisplayName = hostName },
            ExcludeCredentials = [.. known.Select(one => new PublicKeyCredentialDescriptor(one.Credential))],
            // Found by the device itself, so that nobody types a name; a finger or a code where the device has one.
            AuthenticatorSelection = new AuthenticatorSelection { ResidentKey = ResidentKeyRequirement.Required, UserVerification = UserVerificationRequirement.Preferred },
            // Which make of device it is, is none of a kitchen's business.
            AttestationPreference = AttestationConveyancePreference.None,
        });
        var json = options.ToJson();
        await challenges.KeepAsync(options.Challenge, session, json);
        return json;
    }

    internal async Task<PasskeyAnswer> AddAsync(PasskeyPlace place, Guid host, Guid session, string name, AuthenticatorAttestationRawResponse answer, CancellationToken stop)
    {
        name = name.Trim();
        if (name.Length is 0 or > LongestName)
        {
            return PasskeyAnswer.NeedsName;
        }

        await using var db = await databases.CreateDbContextAsync(stop);
        if (await db.Set<PasskeyRow>().CountAsync(one => one.Host == host, stop) >= Most)
        {
            return PasskeyAnswer.TooMany;
        }

        if (await challenges.TakeAsync(answer.Response.ClientDataJson, session) is not { } asked)
        {
            return PasskeyAnswer.TooLate;
        }

        RegisteredPublicKeyCredential made;
        try
        {
            made = await place.Reader().MakeNewCredentialAsync(
                new MakeNewCredentialParams
                {
                    AttestationResponse = answer,
                    OriginalOptions = CredentialCreateOptions.FromJson(asked),
                    IsCredentialIdUniqueToUserCallback = async (one, _) => !await db.Set<PasskeyRow>().AnyAsync(known => known.Credential == one.CredentialId, stop),
                },
                stop);
        }
        catch (Fido2VerificationException)
        {
            return PasskeyAnswer.Wrong;
        }

        db.Add(new PasskeyRow
        {
            Id = Guid.CreateVersion7(time.GetUtcNow()),
            Host = host,
            Credential = made.Id,
            PublicKey = made.PublicKey,
            Place = place.Name,
            Name = name,
            SignCount = made.SignCount,
            AddedAt = time.GetUtcNow().ToUnixTimeMilliseconds(),
        });
        try
        {
            await db.SaveChangesAsync(stop);
            return PasskeyAnswer.Good;
        }
        catch (DbUpdateException failure) when (CookAlongDb.IsTaken(failure))
        {
            return PasskeyAnswer.Wrong;
        }
    }

    /// <summary>What any device may answer to sign its host in.</summary>
    internal async Task<string> AskToSignInAsync(PasskeyPlace place)
    {
        var options = place.Reader().GetAssertionOptions(new GetAssertionOptionsParams { UserVerification = UserVerificationRequirement.Preferred });
        var json = options.ToJson();
        await challenges.KeepAsync(options.Challenge, session: null, json);
        return json;
    }

    /// <summary>Whose passkey answered; null when the answer is not good.</summary>
    internal async Task<HostRow?> FindAsync(PasskeyPlace place, AuthenticatorAssertionRawResponse answer, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        if (await challenges.TakeAsync(answer.Response.ClientDataJson, session: null) is not { } asked
            || await db.Set<PasskeyRow>().AsNoTracking().SingleOrDefaultAsync(one => one.Credential == answer.RawId && one.Place == place.Name, stop) is not { } known)
        {
            return null;
        }

        VerifyAssertionResult result;
        try
        {
            // Refuses a count that did not grow, too.
            result = await place.Reader().MakeAssertionAsync(
                new MakeAssertionParams
                {
                    AssertionResponse = answer,
                    OriginalOptions = AssertionOptions.FromJson(asked),
                    StoredPublicKey = known.PublicKey,
                    StoredSignatureCounter = (uint)known.SignCount,
                    IsUserHandleOwnerOfCredentialIdCallback = (one, _) => Task.FromResult(one.UserHandle.AsSpan().SequenceEqual(known.Host.ToByteArray())),
                },
                stop);
        }
        catch (Fido2VerificationException)
        {
            return null;
        }

        var now = time.GetUtcNow().ToUnixTimeMilliseconds();
        // Of two answers with the same count one is a copy's; the first to come wins.
        var counted = await db.Set<PasskeyRow>().Where(one => one.Id == known.Id && one.SignCount == known.SignCount).ExecuteUpdateAsync(
            set => set.SetProperty(one => one.SignCount, (long)result.SignCount).SetProperty(one => one.LastUsedAt, now),
            stop);
        return counted == 1 ? await db.Hosts.AsNoTracking().SingleOrDefaultAsync(host => host.Id == known.Host, stop) : null;
    }
}

/// <summary>What came of a device's answer.</summary>
enum PasskeyAnswer { Good, NeedsName, TooMany, TooLate, Wrong }
