using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>A host cook's account. The id is also their person in every run they start.</summary>
public sealed class HostRow
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    /// <summary>The name as it is compared: two spellings that look alike are one account.</summary>
    public required string NameKey { get; set; }

    public required string PasswordHash { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<HostRow>
    {
        public void Configure(EntityTypeBuilder<HostRow> builder) => builder.HasIndex(host => host.NameKey).IsUnique();
    }
}

/// <summary>A signed-in browser: a host's, or a guest's in exactly one run. Ending it signs the browser out at its next request.</summary>
public sealed class SessionRow
{
    public required Guid Id { get; init; }

    /// <summary>The host's id, or the guest's person.</summary>
    public required Guid Person { get; init; }

    /// <summary>Null for a host.</summary>
    public Guid? Run { get; init; }

    /// <summary>Milliseconds since the Unix epoch, UTC: SQLite cannot order DateTimeOffset.</summary>
    public required long BeganAt { get; init; }

    public long? EndedAt { get; set; }

    /// <summary>What it calls itself in a few words, "Firefox on Linux"; null for sessions from before this was kept.</summary>
    public string? Device { get; init; }

    /// <summary>The address its latest request came from, to five minutes.</summary>
    public string? Address { get; set; }

    /// <summary>To five minutes; null = not seen since this is kept.</summary>
    public long? LastSeenAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<SessionRow>
    {
        public void Configure(EntityTypeBuilder<SessionRow> builder) => builder.HasIndex(session => session.Person);
    }
}
