using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>A key on a host's device that signs them in (W3C, Web Authentication Level 2). Only its public half is here.</summary>
public sealed class PasskeyRow
{
    public required Guid Id { get; init; }

    public required Guid Host { get; init; }

    /// <summary>What the device calls it; no two accounts may have the same.</summary>
    public required byte[] Credential { get; init; }

    /// <summary>COSE_Key (RFC 9052).</summary>
    public required byte[] PublicKey { get; init; }

    /// <summary>The server's name it was made at; it works at no other.</summary>
    public required string Place { get; init; }

    /// <summary>What its host calls it.</summary>
    public required string Name { get; init; }

    /// <summary>How often the device says it has signed; a number that does not grow is a copy's. Always 0 where a device does not count.</summary>
    public required long SignCount { get; set; }

    public required long AddedAt { get; init; }

    public long? LastUsedAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<PasskeyRow>
    {
        public void Configure(EntityTypeBuilder<PasskeyRow> builder)
        {
            builder.ToTable("Passkeys");
            builder.HasIndex(passkey => passkey.Credential).IsUnique();
            builder.HasIndex(passkey => passkey.Host);
            builder.HasOne<HostRow>().WithMany().HasForeignKey(passkey => passkey.Host).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>What a device was asked to sign, kept until it is answered once or a few minutes are over.</summary>
public sealed class PasskeyChallengeRow
{
    /// <summary>The challenge, base64url.</summary>
    public required string Challenge { get; init; }

    /// <summary>The session that may answer it by adding a passkey; null = it may be answered by signing in.</summary>
    public Guid? Session { get; init; }

    /// <summary>All that was asked, as JSON.</summary>
    public required string Options { get; init; }

    public required long Expires { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<PasskeyChallengeRow>
    {
        public void Configure(EntityTypeBuilder<PasskeyChallengeRow> builder)
        {
            builder.ToTable("PasskeyChallenges");
            builder.HasKey(one => one.Challenge);
            builder.HasIndex(one => one.Expires);
        }
    }
}
