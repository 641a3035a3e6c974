using System.Collections.Immutable;

namespace CookAlong.Domain.FoodSafety;

/// <summary>
/// What the heat has done so far, as a running sum: each span of time counts for its share of the time its temperature has to be kept.
/// A span between two readings counts as the cooler of them. Gaps in which nobody looked count only as far as that is known.
/// </summary>
/// <param name="Share">Of what the table asks for; 1 = done. Never counts back: what is killed stays killed.</param>
/// <param name="Logs">Powers of ten by which the table's germ is fewer, at the least.</param>
/// <param name="DoneAt">When the share came to 1; null = not yet.</param>
public sealed record Lethality(KillTable Table, double Share, double Logs, DateTimeOffset? DoneAt)
{
    /// <summary>Longer than this between two readings nobody knows what the core did; nothing is counted.</summary>
    public static readonly TimeSpan LongestGap = TimeSpan.FromMinutes(30);

    /// <param name="core">Core temperatures in order of time; of a forecast or of a probe that is believed.</param>
    public static Lethality Of(IReadOnlyList<(DateTimeOffset At, double Celsius)> core, KillTable table)
    {
        var (share, done) = (0.0, (DateTimeOffset?)null);
        foreach (var (from, to) in core.Zip(core.Skip(1)))
        {
            var span = to.At - from.At;
            if (span <= TimeSpan.Zero || span > LongestGap || Seconds(Math.Min(from.Celsius, to.Celsius), table) is not { } needed)
            {
                continue;
            }

            var before = share;
            share = needed <= 0 ? Math.Max(1, share) : share + (span.TotalSeconds / needed);
            if (done is null && share >= 1)
            {
                done = from.At + (needed <= 0 ? TimeSpan.Zero : (1 - before) * TimeSpan.FromSeconds(needed));
            }
        }

        return new(table, share, table.Logs * share, done);
    }

    /// <summary>By several tables the slowest decides; they are never averaged.</summary>
    public static Lethality Of(IReadOnlyList<(DateTimeOffset At, double Celsius)> core, ImmutableArray<KillTable> tables) =>
        tables.Select(table => Of(core, table)).MinBy(one => one.Share)!;

    /// <summary>Of the published rows and, for the United Kingdom's, the curve of the germ they are made for, the slower.</summary>
    static double? Seconds(double celsius, KillTable table) =>
        !double.IsFinite(celsius) || table.Seconds(celsius) is not { } rows ? null
        : table == KillTables.UnitedKingdom && celsius <= table.Rows[^1].Celsius ? Math.Max(rows, ZCurve.Listeria.At(celsius))
        : rows;
}
