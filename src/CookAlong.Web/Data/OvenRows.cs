using System.Collections.Immutable;
using System.ComponentModel.DataAnnotations.Schema;
using System.Text.Json;
using System.Text.Json.Serialization;
using CookAlong.Domain.Debrief.Learning.Ovens;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>An oven measured once, by the guided half hour.</summary>
public sealed class OvenTrialRow
{
    public required Guid Id { get; init; }

    /// <summary>As meals call it.</summary>
    public required string Oven { get; init; }

    /// <summary>°C it was turned to.</summary>
    public required int Dial { get; init; }

    /// <summary>When the dial was turned. Milliseconds since the Unix epoch, UTC, like every instant here.</summary>
    public required long Began { get; init; }

    /// <summary>When its door was shut again; null = it was not opened yet.</summary>
    public long? DoorShut { get; set; }

    /// <summary>When it was turned off; null = it is on.</summary>
    public long? Off { get; set; }

    /// <summary>When it was done; null = it goes on.</summary>
    public long? Ended { get; set; }

    /// <summary>JSON: [[instant, °C], ...] in order.</summary>
    public required string Document { get; set; }

    /// <summary>What the thermometer showed, when.</summary>
    public ImmutableArray<(long At, double Celsius)> Readings() => [.. (JsonSerializer.Deserialize<double[][]>(Document) ?? []).Select(one => ((long)one[0], one[1]))];

    /// <summary>The same by the minute.</summary>
    public OvenTrial Trial() => new(Dial, [.. Readings().Select(one => new OvenReading(MinuteOf(one.At), one.Celsius))], MinuteOf(DoorShut), MinuteOf(Off));

    double MinuteOf(long at) => (at - Began) / 60_000.0;

    double? MinuteOf(long? at) => at is { } known ? MinuteOf(known) : null;

    internal sealed class Shape : IEntityTypeConfiguration<OvenTrialRow>
    {
        public void Configure(EntityTypeBuilder<OvenTrialRow> builder) => builder.ToTable("OvenTrials");
    }
}

/// <summary>What the cook plans an oven with in place of what meals say; null = as they say.</summary>
public sealed class OvenFigureRow
{
    /// <summary>Its name in small letters.</summary>
    public required string Oven { get; init; }

    /// <summary>°C a minute, as is the next.</summary>
    public required double? HeatUpPerMinute { get; init; }

    public required double? CoolDownPerMinute { get; init; }

    /// <summary>°C.</summary>
    public required int? ReadsHighBy { get; init; }

    public required long AcceptedAt { get; init; }

    [NotMapped, JsonIgnore]
    public AcceptedOven Accepted => new(Oven, (decimal?)HeatUpPerMinute, (decimal?)CoolDownPerMinute, ReadsHighBy);

    internal sealed class Shape : IEntityTypeConfiguration<OvenFigureRow>
    {
        public void Configure(EntityTypeBuilder<OvenFigureRow> builder)
        {
            builder.ToTable("OvenFigures");
            builder.HasKey(row => row.Oven);
        }
    }
}
