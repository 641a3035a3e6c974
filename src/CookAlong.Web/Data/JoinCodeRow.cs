using CookAlong.Domain.Runs;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>A way into one run, for one person, for a few minutes.</summary>
public sealed class JoinCodeRow
{
    public required Guid Id { get; init; }

    public required Guid Run { get; init; }

    /// <summary>SHA-256 of a scanned secret in hexadecimal, or salt and slow hash of a typed code; the code itself is shown once and kept nowhere.</summary>
    public required string Hash { get; init; }

    /// <summary>Short enough to be guessed at; wrong tries count against it.</summary>
    public required bool IsTyped { get; init; }

    public required Role Role { get; init; }

    public required long Expires { get; init; }

    public int WrongTries { get; set; }

    public long? UsedAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<JoinCodeRow>
    {
        public void Configure(EntityTypeBuilder<JoinCodeRow> builder)
        {
            builder.ToTable("JoinCodes");
            builder.HasIndex(code => code.Hash).IsUnique();
            builder.Property(code => code.Role).HasConversion<string>();
        }
    }
}
