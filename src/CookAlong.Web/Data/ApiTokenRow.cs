using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>What lets a program in, in its host's name, for what its scopes say.</summary>
public sealed class ApiTokenRow
{
    public required Guid Id { get; init; }

    /// <summary>SHA-256 of the token, in hexadecimal; the token itself is shown once and kept nowhere.</summary>
    public required string Hash { get; init; }

    /// <summary>The host who made it; without them it is worth nothing.</summary>
    public required Guid Host { get; init; }

    /// <summary>What its host calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Separated by spaces (RFC 6749, 3.3).</summary>
    public required string Scopes { get; init; }

    /// <summary>Milliseconds since the Unix epoch, UTC.</summary>
    public required long MadeAt { get; init; }

    /// <summary>To the minute; null = not used yet.</summary>
    public long? LastUsedAt { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<ApiTokenRow>
    {
        public void Configure(EntityTypeBuilder<ApiTokenRow> builder)
        {
            builder.ToTable("ApiTokens");
            builder.HasIndex(one => one.Hash).IsUnique();
            builder.HasOne<HostRow>().WithMany().HasForeignKey(one => one.Host).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
