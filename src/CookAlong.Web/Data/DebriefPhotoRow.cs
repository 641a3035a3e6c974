using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>A picture of one dish of a run, without what cameras write beside it.</summary>
public sealed class DebriefPhotoRow
{
    public required Guid Id { get; init; }

    public required Guid Run { get; init; }

    /// <summary>The dish's id in the meal.</summary>
    public required string Dish { get; init; }

    /// <summary>"image/jpeg", "image/png" or "image/webp".</summary>
    public required string Kind { get; init; }

    /// <summary>The file. In an archive it is an entry of its own, as every document is.</summary>
    [JsonPropertyName("document")]
    public required byte[] Image { get; init; }

    /// <summary>Milliseconds since the Unix epoch, UTC, like every instant here.</summary>
    public required long AddedAt { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<DebriefPhotoRow>
    {
        public void Configure(EntityTypeBuilder<DebriefPhotoRow> builder)
        {
            builder.ToTable("DebriefPhotos");
            builder.HasIndex(photo => photo.Run);
        }
    }
}
