using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Quantities;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>What the household has chosen; one row, and none before anybody has chosen.</summary>
public sealed class SettingsRow
{
    public const int TheOnly = 1;

    public int Id { get; init; } = TheOnly;

    /// <summary>Whose food authority it follows; null = nobody has said.</summary>
    public Region? FoodRegion { get; set; }

    /// <summary>Whose spoons and cups are in its drawer; null = those of its region.</summary>
    public SpoonSizes? Spoons { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<SettingsRow>
    {
        public void Configure(EntityTypeBuilder<SettingsRow> builder)
        {
            builder.ToTable("Settings");
            builder.Property(row => row.Id).ValueGeneratedNever();
            builder.Property(row => row.FoodRegion).HasConversion<string>();
            builder.Property(row => row.Spoons).HasConversion<string>();
        }
    }
}
