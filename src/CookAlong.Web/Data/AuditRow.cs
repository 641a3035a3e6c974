using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>One line of the household's log of who did what to its accounts, doors and data. Never changed; old ones are dropped.</summary>
public sealed class AuditRow
{
    /// <summary>Grows with each line.</summary>
    public long Id { get; init; }

    /// <summary>Milliseconds since the Unix epoch, UTC.</summary>
    public required long At { get; init; }

    public required AuditDeed Deed { get; init; }

    /// <summary>A name as it was then; null where nobody was known.</summary>
    public string? Who { get; init; }

    /// <summary>Where the request came from; null for what the server or its command line did.</summary>
    public string? Address { get; init; }

    /// <summary>What it was done to: a name, a file, a word. Never a secret.</summary>
    public string? About { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<AuditRow>
    {
        public void Configure(EntityTypeBuilder<AuditRow> builder)
        {
            builder.ToTable("Audit");
            builder.HasIndex(row => row.At);
            builder.Property(row => row.Deed).HasConversion<string>();
        }
    }
}

/// <summary>What is written down. The names stand in households' files: they only ever grow in number.</summary>
public enum AuditDeed
{
    SignedIn,
    SignInRefused,
    SignedOut,
    PasswordChanged,
    PasswordChangeRefused,
    PasskeyAdded,
    PasskeyRemoved,
    SessionEnded,
    HostInvited,
    HostAdded,
    HostRemoved,
    JoinCodeMade,
    GuestJoined,
    JoinRefused,
    GuestPutOut,
    SettingsChanged,
    BackupMade,
    BackupFailed,
    Restored,
    Exported,
    Imported,
    TokenMade,
    TokenRevoked,
}
