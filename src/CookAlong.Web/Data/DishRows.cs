using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>A dish of the household's library. What it says stands in its versions.</summary>
public sealed class DishRow
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    /// <summary>The version that holds now, the highest.</summary>
    public int Number { get; set; } = 1;

    /// <summary>Counts edits; an edit made on an older one is refused.</summary>
    public int Revision { get; set; } = 1;

    public required long ChangedAt { get; set; }

    /// <summary>Null while it is in the library. A deleted dish can be brought back.</summary>
    public long? DeletedAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<DishRow>
    {
        public void Configure(EntityTypeBuilder<DishRow> builder) => builder.Property(dish => dish.Revision).IsConcurrencyToken();
    }
}

/// <summary>What a dish was after one sitting of its cook: a dish of a meal file, unknown fields and all.</summary>
public sealed class DishVersionRow
{
    public required Guid Dish { get; init; }

    /// <summary>From 1.</summary>
    public required int Number { get; init; }

    public required string Document { get; set; }

    public required long ChangedAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<DishVersionRow>
    {
        public void Configure(EntityTypeBuilder<DishVersionRow> builder)
        {
            builder.HasKey(version => new { version.Dish, version.Number });
            builder.HasOne<DishRow>().WithMany().HasForeignKey(version => version.Dish).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
