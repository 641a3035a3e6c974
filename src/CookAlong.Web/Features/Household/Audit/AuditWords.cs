using System.Diagnostics;
using CookAlong.Web.Data;

namespace CookAlong.Web.Features.Household.Audit;

/// <summary>Lines of the household's log in words.</summary>
static class AuditWords
{
    public static string Of(AuditDeed deed) => deed switch
    {
        AuditDeed.SignedIn => "Signed in",
        AuditDeed.SignInRefused => "Sign-in refused",
        AuditDeed.SignedOut => "Signed out",
        AuditDeed.PasswordChanged => "Changed the password",
        AuditDeed.PasswordChangeRefused => "Change of password refused",
        AuditDeed.PasskeyAdded => "Added a passkey",
        AuditDeed.PasskeyRemoved => "Removed a passkey",
        AuditDeed.SessionEnded => "Signed a device out",
        AuditDeed.HostInvited => "Invited a host",
        AuditDeed.HostAdded => "Became a host",
        AuditDeed.HostRemoved => "Removed a host",
        AuditDeed.JoinCodeMade => "Made a code to join",
        AuditDeed.GuestJoined => "Joined a kitchen",
        AuditDeed.JoinRefused => "Code to join refused",
        AuditDeed.GuestPutOut => "Put somebody out",
        AuditDeed.SettingsChanged => "Changed a setting",
        AuditDeed.BackupMade => "Made a backup",
        AuditDeed.BackupFailed => "A backup failed",
        AuditDeed.Restored => "Restored a backup",
        AuditDeed.Exported => "Took data out",
        AuditDeed.Imported => "Took data in",
        AuditDeed.TokenMade => "Made a token for a program",
        AuditDeed.TokenRevoked => "Revoked a token",
        _ => throw new UnreachableException($"no words for {deed}"),
    };
}
