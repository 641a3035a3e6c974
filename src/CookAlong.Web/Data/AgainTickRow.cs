using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>Something to do differently that was seen to, for one meal.</summary>
public sealed class AgainTickRow
{
    public required Guid Meal { get; init; }

    /// <summary>Its words.</summary>
    public required string Item { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<AgainTickRow>
    {
        public void Configure(EntityTypeBuilder<AgainTickRow> builder)
        {
            builder.ToTable("AgainTicks");
            builder.HasKey(tick => new { tick.Meal, tick.Item });
            builder.HasOne<MealRow>().WithMany().HasForeignKey(tick => tick.Meal).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
