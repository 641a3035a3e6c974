using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>
/// A meal is its file: the document is the meal file as it came in and as it was edited, unknown fields and all,
/// so that an export gives back what was put in.
/// </summary>
public sealed class MealRow
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    public required string Document { get; set; }

    /// <summary>Counts edits; an edit made on an older version is refused.</summary>
    public int Version { get; set; } = 1;

    public required long ChangedAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<MealRow>
    {
        public void Configure(EntityTypeBuilder<MealRow> builder) => builder.Property(meal => meal.Version).IsConcurrencyToken();
    }
}

/// <summary>A plan made for one version of a meal, as a plan file.</summary>
public sealed class PlanRow
{
    public required Guid Id { get; init; }

    public required Guid Meal { get; init; }

    public required int MealVersion { get; init; }

    public required string Document { get; init; }

    public required long MadeAt { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<PlanRow>
    {
        public void Configure(EntityTypeBuilder<PlanRow> builder)
        {
            builder.HasIndex(plan => new { plan.Meal, plan.MadeAt });
            builder.HasOne<MealRow>().WithMany().HasForeignKey(plan => plan.Meal).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
