using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>A run there is or was. What happened in it is in its events; this is only the list.</summary>
public sealed class RunRow
{
    public required Guid Id { get; init; }

    public required Guid Meal { get; init; }

    /// <summary>The meal's, when the run began.</summary>
    public required string Name { get; init; }

    /// <summary>Milliseconds since the Unix epoch, UTC, like every instant here.</summary>
    public required long Began { get; init; }

    public long? Ended { get; set; }

    /// <summary>A rehearsal: how fast its clock runs, 1 to 120. Null = the meal was cooked.</summary>
    public int? Rate { get; init; }

    /// <summary>What a rehearsal's clock showed when it began; null for a real run.</summary>
    public long? Shows { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<RunRow>
    {
        public void Configure(EntityTypeBuilder<RunRow> builder) => builder.HasIndex(run => run.Ended);
    }
}

/// <summary>One event of a run, never changed and never removed.</summary>
public sealed class RunEventRow
{
    public required Guid Run { get; init; }

    public required long Sequence { get; init; }

    public required Guid Command { get; init; }

    /// <summary>0, 1, ... among the events of one command, which are written together or not at all.</summary>
    public required int Part { get; init; }

    public required Guid? By { get; init; }

    public required long At { get; init; }

    /// <summary>Kind and version, "stepFinished/1"; see <see cref="StoredEvent"/>.</summary>
    public required string Kind { get; init; }

    public required string Document { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<RunEventRow>
    {
        public void Configure(EntityTypeBuilder<RunEventRow> builder)
        {
            builder.ToTable("RunEvents");
            builder.HasKey(row => new { row.Run, row.Sequence });

            // The same tap sent twice, or decided on two nodes at once, is written once.
            builder.HasIndex(row => new { row.Run, row.Command, row.Part }).IsUnique();
        }
    }
}
