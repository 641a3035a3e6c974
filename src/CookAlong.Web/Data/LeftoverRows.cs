using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>What somebody said of one dish's leftovers. What nobody said follows from the meal and its run.</summary>
public sealed class LeftoverRow
{
    public required Guid Meal { get; init; }

    /// <summary>The dish's id in the meal.</summary>
    public required string Dish { get; init; }

    /// <summary>0 to 100.</summary>
    public int Portions { get; set; }

    /// <summary>Names of kinds, with commas between; null = guessed from its ingredients.</summary>
    public string? Kinds { get; set; }

    /// <summary>Milliseconds since the Unix epoch, UTC, like every instant here; null = as the run saw it.</summary>
    public long? OffTheHeatAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<LeftoverRow>
    {
        public void Configure(EntityTypeBuilder<LeftoverRow> builder)
        {
            builder.ToTable("Leftovers");
            builder.HasKey(row => new { row.Meal, row.Dish });
            builder.HasOne<MealRow>().WithMany().HasForeignKey(row => row.Meal).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
