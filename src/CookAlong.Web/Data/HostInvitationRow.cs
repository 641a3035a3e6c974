using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>A way to become a host of this household, for one person and a day.</summary>
public sealed class HostInvitationRow
{
    public required Guid Id { get; init; }

    /// <summary>SHA-256 of the secret, in hexadecimal; the secret itself is shown once and kept nowhere.</summary>
    public required string Hash { get; init; }

    /// <summary>The host who invites; without them it is worth nothing.</summary>
    public required Guid By { get; init; }

    public required long Expires { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<HostInvitationRow>
    {
        public void Configure(EntityTypeBuilder<HostInvitationRow> builder)
        {
            builder.ToTable("HostInvitations");
            builder.HasIndex(one => one.Hash).IsUnique();
            builder.HasOne<HostRow>().WithMany().HasForeignKey(one => one.By).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
