using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>
/// A call on its way out of the page, to one receiver. Written when it is due, claimed before it is sent and marked when it
/// was: a crash between the two sends it once more and never loses it.
/// </summary>
public sealed class DeliveryRow
{
    public required Guid Run { get; init; }

    public required string Call { get; init; }

    /// <summary>"webhook", "mqtt" or "push:" and the subscription's id.</summary>
    public required string Way { get; init; }

    public required string Text { get; init; }

    public required string Priority { get; init; }

    /// <summary>Milliseconds since the Unix epoch, UTC, like every instant here.</summary>
    public required long Due { get; init; }

    /// <summary>Not to be tried before; while it is sent, until when its server's claim is good.</summary>
    public required long NextAt { get; set; }

    public int Tries { get; set; }

    /// <summary>When it was sent, or given up; null while it is on its way.</summary>
    public long? DoneAt { get; set; }

    /// <summary>Why the last try failed, or why it need not be sent any more; null when it was sent.</summary>
    public string? Failure { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<DeliveryRow>
    {
        public void Configure(EntityTypeBuilder<DeliveryRow> builder)
        {
            builder.ToTable("Deliveries");
            builder.HasKey(row => new { row.Run, row.Call, row.Way });
            builder.HasIndex(row => new { row.DoneAt, row.NextAt });
        }
    }
}

/// <summary>A browser that wants calls while its page is closed, as its push service named it.</summary>
public sealed class PushSubscriptionRow
{
    public required Guid Id { get; init; }

    public required Guid Run { get; init; }

    public required Guid Person { get; init; }

    public required string Endpoint { get; init; }

    /// <summary>The browser's public key, base64url.</summary>
    public required string P256dh { get; init; }

    /// <summary>The secret shared with the browser, base64url.</summary>
    public required string Auth { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<PushSubscriptionRow>
    {
        public void Configure(EntityTypeBuilder<PushSubscriptionRow> builder)
        {
            builder.ToTable("PushSubscriptions");
            builder.HasIndex(row => new { row.Run, row.Endpoint }).IsUnique();
        }
    }
}

/// <summary>A key of the household's own, made once.</summary>
public sealed class HouseKeyRow
{
    public required string Name { get; init; }

    public required string Value { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<HouseKeyRow>
    {
        public void Configure(EntityTypeBuilder<HouseKeyRow> builder)
        {
            builder.ToTable("HouseKeys");
            builder.HasKey(row => row.Name);
        }
    }
}
