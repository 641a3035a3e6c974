using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CookAlong.Web.Data;

/// <summary>
/// A call that has come. It is claimed before it is sent and marked when it was, so that none is lost when the server
/// dies between the two; a device knows a call by its id, so that none rings twice.
/// </summary>
public sealed class CallRow
{
    public required Guid Run { get; init; }

    public required string Call { get; init; }

    public required long Due { get; init; }

    public long? ClaimedAt { get; set; }

    public long? RungAt { get; set; }

    internal sealed class Shape : IEntityTypeConfiguration<CallRow>
    {
        public void Configure(EntityTypeBuilder<CallRow> builder)
        {
            builder.ToTable("Calls");
            builder.HasKey(row => new { row.Run, row.Call });
        }
    }
}
