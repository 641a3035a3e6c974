using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>One tap on a meal's shopping list, never changed: a list is its taps, as a run is its events.</summary>
public sealed class ShoppingTapRow
{
    /// <summary>No foreign key: what is of the household outlives the meal it was tapped in.</summary>
    public required Guid Meal { get; init; }

    /// <summary>1, 2, ... within the meal.</summary>
    public required long Sequence { get; init; }

    /// <summary>The screen's own; the same tap sent again carries the same.</summary>
    public required Guid Command { get; init; }

    /// <summary>The person.</summary>
    public required Guid By { get; init; }

    /// <summary>Milliseconds since the Unix epoch, UTC, like every instant here.</summary>
    public required long At { get; init; }

    /// <summary>Which setting of the household it makes, for every meal: "aisles". The latest counts. Null = it is about this meal's list alone.</summary>
    public string? Setting { get; init; }

    /// <summary>The tap as it is sent, JSON.</summary>
    public required string Document { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<ShoppingTapRow>
    {
        public void Configure(EntityTypeBuilder<ShoppingTapRow> builder)
        {
            builder.ToTable("ShoppingTaps");
            builder.HasKey(tap => new { tap.Meal, tap.Sequence });
            builder.HasIndex(tap => new { tap.Meal, tap.Command }).IsUnique();
            builder.HasIndex(tap => new { tap.Setting, tap.At });
        }
    }
}
