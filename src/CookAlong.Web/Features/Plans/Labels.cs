using System.Collections.Immutable;

namespace CookAlong.Web.Features.Plans;

/// <summary>Where a lane's words stand. A label is never cut off: inside its bar, beside it, in fewer words, or not at all (touch tells).</summary>
public static class Labels
{
    /// <summary>Mean width of a letter of the labels' type, as a part of its size. Measured on Atkinson Hyperlegible Next semi-bold, rounded up.</summary>
    const double LetterWidth = 0.56;

    const double Pad = 7;

    public static double WidthOf(string words, double size) => words.Length * size * LetterWidth;

    /// <summary>
    /// People's lanes: jobs never overlap but their words would, so bars go down a stair of up to
    /// <paramref name="rows"/> rows, each to the first row where its words find room.
    /// </summary>
    public static ImmutableArray<PlacedBar> Stair(IReadOnlyList<Bar> bars, TimeScale scale, double size, int rows)
    {
        var fullUpTo = Enumerable.Repeat(double.NegativeInfinity, rows).ToArray();
        var placed = ImmutableArray.CreateBuilder<PlacedBar>(bars.Count);
        for (var i = 0; i < bars.Count; i++)
        {
            var bar = bars[i];
            var (x, width) = Extent(bar, scale);
            var choices =
                from words in new[] { bar.Label, bar.Brief }
                from row in Enumerable.Range(0, rows)
                where fullUpTo[row] <= x
                let end = WidthOf(words, size) + (2 * Pad) <= width ? x + width : x + width + WidthOf(words, size) + Pad
                where end <= scale.Width
                select (words, row, end);
            var (label, at, until) = choices.Select(choice => ((string?)choice.words, choice.row, choice.end)).FirstOrDefault(
                (null, Array.IndexOf(fullUpTo, fullUpTo.Min()), x + width));
            fullUpTo[at] = Math.Max(until, fullUpTo[at]) + 2;
            placed.Add(new PlacedBar(bar, x, width, at, label, label is null ? LabelPlace.None : Place(label, width, size)));
        }

        return placed.MoveToImmutable();
    }

    /// <summary>Lanes whose rows are real places (shelves, rings): words inside, or beside up to the next bar of the row.</summary>
    public static ImmutableArray<PlacedBar> InPlace(IReadOnlyList<Bar> bars, TimeScale scale, double size)
    {
        return
        [
            .. bars.Select(bar =>
            {
                var (x, width) = Extent(bar, scale);
                var room = bars.Where(other => Shares(bar, other) && other.From >= bar.To).Select(other => scale.X(other.From)).DefaultIfEmpty(scale.Width).Min();
                string[] words = [bar.Label, bar.Brief];
                var inside = words.FirstOrDefault(one => WidthOf(one, size) + (2 * Pad) <= width);
                var beside = inside is null ? words.FirstOrDefault(one => x + width + WidthOf(one, size) + Pad <= room) : null;
                var place = inside is not null ? LabelPlace.Inside : beside is not null ? LabelPlace.Beside : LabelPlace.None;
                return new PlacedBar(bar, x, width, bar.Row, inside ?? beside, place);
            }),
        ];
    }

    static bool Shares(Bar one, Bar other) =>
        !ReferenceEquals(one, other) && one.Row < other.Row + other.RowSpan && other.Row < one.Row + one.RowSpan;

    static LabelPlace Place(string words, double width, double size) =>
        WidthOf(words, size) + (2 * Pad) <= width ? LabelPlace.Inside : LabelPlace.Beside;

    static (double X, double Width) Extent(Bar bar, TimeScale scale)
    {
        var x = scale.X(bar.From);
        return (x, Math.Max(4, scale.X(bar.To) - x - 1));
    }
}

/// <param name="Words">Null where none find room.</param>
public sealed record PlacedBar(Bar Bar, double X, double Width, int Row, string? Words, LabelPlace Place);

public enum LabelPlace { Inside, Beside, None }
