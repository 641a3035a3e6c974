using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>What the household says of one dish of a run, or of the whole meal.</summary>
public sealed class DebriefNoteRow
{
    public required Guid Run { get; init; }

    /// <summary>The dish's id in the meal; "" = the whole meal.</summary>
    public required string Dish { get; init; }

    /// <summary>"more", "less", "never", or "" for none.</summary>
    public required string Verdict { get; set; }

    public required string Note { get; set; }

    /// <summary>Milliseconds since the Unix epoch, UTC, like every instant here.</summary>
    public required long ChangedAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<DebriefNoteRow>
    {
        public void Configure(EntityTypeBuilder<DebriefNoteRow> builder)
        {
            builder.ToTable("DebriefNotes");
            builder.HasKey(note => new { note.Run, note.Dish });
        }
    }
}

/// <summary>How long a step takes in this household, accepted by its cook in place of what is written.</summary>
public sealed class LearnedTimeRow
{
    /// <summary>What the dish is known by: its place in the library, or its name in small letters.</summary>
    public required string Dish { get; init; }

    /// <summary>The step's headline, small letters.</summary>
    public required string Text { get; init; }

    /// <summary>The dish as people call it.</summary>
    public required string DishName { get; set; }

    /// <summary>Times the likely minutes written; 8 in 10 times lie from least to most.</summary>
    public required double Least { get; set; }

    public required double Likely { get; set; }

    public required double Most { get; set; }

    /// <summary>In how many it was timed.</summary>
    public required int Meals { get; set; }

    public required long AcceptedAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<LearnedTimeRow>
    {
        public void Configure(EntityTypeBuilder<LearnedTimeRow> builder)
        {
            builder.ToTable("LearnedTimes");
            builder.HasKey(learned => new { learned.Dish, learned.Text });
        }
    }
}

/// <summary>
/// What the recipe said where a run was planned with something learned, so that what is timed is held against the recipe
/// and nothing is learned twice. It stays when the learned figure goes.
/// </summary>
public sealed class WrittenTimeRow
{
    public required Guid Run { get; init; }

    public required string Step { get; init; }

    /// <summary>Which way of doing it; -1 = as written.</summary>
    public required int Option { get; init; }

    /// <summary>Minutes, as are the next two.</summary>
    public required int Least { get; init; }

    public required int Likely { get; init; }

    public required int Most { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<WrittenTimeRow>
    {
        public void Configure(EntityTypeBuilder<WrittenTimeRow> builder)
        {
            builder.ToTable("WrittenTimes");
            builder.HasKey(written => new { written.Run, written.Step, written.Option });
        }
    }
}

/// <summary>A meal that is another one cooked again, and the run that shows what to do differently.</summary>
public sealed class AgainRow
{
    public required Guid Meal { get; init; }

    /// <summary>The last time.</summary>
    public required Guid Run { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<AgainRow>
    {
        public void Configure(EntityTypeBuilder<AgainRow> builder)
        {
            builder.ToTable("Again");
            builder.HasKey(again => again.Meal);
            builder.HasOne<MealRow>().WithOne().HasForeignKey<AgainRow>(again => again.Meal).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>A run that teaches nothing any more, because its household said so. Its log stays.</summary>
public sealed class ForgottenRunRow
{
    public required Guid Run { get; init; }

    internal sealed class Shape : IEntityTypeConfiguration<ForgottenRunRow>
    {
        public void Configure(EntityTypeBuilder<ForgottenRunRow> builder)
        {
            builder.ToTable("ForgottenRuns");
            builder.HasKey(forgotten => forgotten.Run);
        }
    }
}
