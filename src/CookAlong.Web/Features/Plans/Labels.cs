using System.Collections.Immutable;

namespace CookAlong.Web.Features.Plans;

/// <summary>Where a lane's words stand. A label is never cut off: inside its bar, beside it, in fewer words, or not at all (touch tells).</summary>
public static class Labels
{
    /// <summary>Mean width of a letter of the labels' type, as a part of its size. Measured on Atkinson Hyperlegible Next semi-bold, rounded up.</summary>
    const double LetterWidth = 0.56;

    /// <summary>Between the bar's edge and its words, inside and outside.</summary>
    const double Pad = 7;

    /// <summary>Least room between one thing and the next in a row.</summary>
    const double Apart = 4;

    public static double WidthOf(string words, double size) => words.Length * size * LetterWidth;

    /// <summary>
    /// People's lanes: their jobs stand on one strip, many of them short; words that do not fit inside go below it, on up to
    /// <paramref name="rows"/> rows, the longest jobs first, each on the first row that has room.
    /// </summary>
    public static ImmutableArray<PlacedBar> Below(IEnumerable<Bar> bars, TimeScale scale, double size, int rows)
    {
        var taken = Enumerable.Range(0, rows).Select(_ => new List<(double From, double To)>()).ToArray();
        return
        [
            .. from bar in bars.OrderByDescending(bar => bar.To - bar.From).ThenBy(bar => bar.From).ToList()
               select PlaceBelow(bar, scale, size, taken) into placed
               orderby placed.Bar.From
               select placed,
        ];
    }

    /// <summary>Lanes whose rows are real places (shelves, rings): words inside, on up to <paramref name="lines"/> lines a row, or beside where the row is free.</summary>
    public static ImmutableArray<PlacedBar> InPlace(IEnumerable<Bar> bars, TimeScale scale, double size, int lines = 1)
    {
        var inOrder = bars.OrderBy(bar => bar.From).ToList();
        var placed = ImmutableArray.CreateBuilder<PlacedBar>();
        var taken = new List<(Bar Bar, double To)>();
        foreach (var bar in inOrder)
        {
            var (x, width) = Extent(bar, scale);
            var stretch = scale.StretchAt(x);
            var from = taken.Where(other => SharesRow(bar, other.Bar)).Select(other => other.To + Apart).Append(stretch.X).Max();
            var to = inOrder.Where(other => SharesRow(bar, other) && other.From >= bar.To).Select(other => scale.X(other.From)).Append(stretch.X + stretch.Width).Min();
            var label = Beside(bar.Label, x, width, from, to, size, lines * bar.RowSpan) ?? Beside(bar.Brief, x, width, from, to, size, lines * bar.RowSpan);
            taken.Add((bar, label?.To ?? x + width));
            placed.Add(new PlacedBar(bar, x, width, label?.Lines ?? [], label?.Place ?? LabelPlace.None));
        }

        return placed.ToImmutable();
    }

    static PlacedBar PlaceBelow(Bar bar, TimeScale scale, double size, List<(double From, double To)>[] taken)
    {
        var (x, width) = Extent(bar, scale);
        if (WidthOf(bar.Label, size) + (2 * Pad) <= width)
        {
            return new PlacedBar(bar, x, width, [bar.Label], LabelPlace.Inside);
        }

        var stretch = scale.StretchAt(x);
        foreach (var words in new[] { bar.Label, bar.Brief })
        {
            var wide = WidthOf(words, size);
            for (var row = 0; row < taken.Length; row++)
            {
                foreach (var (from, place) in new[] { (x, LabelPlace.Below), (x + width - wide, LabelPlace.BelowBackward) })
                {
                    var to = from + wide;
                    if (from >= stretch.X && to <= stretch.X + stretch.Width
                        && taken[row].TrueForAll(other => to + Apart <= other.From || other.To + Apart <= from))
                    {
                        taken[row].Add((from, to));
                        return new PlacedBar(bar, x, width, [words], place, row);
                    }
                }
            }
        }

        return new PlacedBar(bar, x, width, [], LabelPlace.None);
    }

    static (ImmutableArray<string> Lines, LabelPlace Place, double To)? Beside(string words, double x, double width, double from, double to, double size, int lines)
    {
        var wide = WidthOf(words, size);
        return Wrapped(words, (int)((width - (2 * Pad)) / (size * LetterWidth)), lines) is { } inside ? (inside, LabelPlace.Inside, x + width)
            : x + width + wide + Pad <= to ? ([words], LabelPlace.After, x + width + wide + Pad)
            : x - wide - Pad >= from ? ([words], LabelPlace.Before, x + width)
            : null;
    }

    /// <summary>Null where it does not fit.</summary>
    static ImmutableArray<string>? Wrapped(string words, int letters, int most)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var word in words.Split(' '))
        {
            if (lines.Count > 0 && lines[^1].Length + 1 + word.Length <= letters)
            {
                lines[^1] = $"{lines[^1]} {word}";
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines.Count <= most && lines.All(line => line.Length <= letters) ? lines.ToImmutable() : null;
    }

    static bool SharesRow(Bar one, Bar other) =>
        !ReferenceEquals(one, other) && one.Row < other.Row + other.RowSpan && other.Row < one.Row + one.RowSpan;

    static (double X, double Width) Extent(Bar bar, TimeScale scale)
    {
        var x = scale.X(bar.From);
        return (x, Math.Max(4, scale.X(bar.To) - x - 1));
    }
}

/// <param name="Lines">Empty where no words find room.</param>
/// <param name="WordsRow">The row of words below a strip; 0 elsewhere.</param>
public sealed record PlacedBar(Bar Bar, double X, double Width, ImmutableArray<string> Lines, LabelPlace Place, int WordsRow = 0);

public enum LabelPlace { Inside, After, Before, Below, BelowBackward, None }
