using System.Collections.Immutable;
using CookAlong.Domain;

namespace CookAlong.Web.Features.Plans;

/// <summary>Minutes to pixels. Long stretches in which nothing happens (the night after a prep day) shrink to a narrow fold.</summary>
public sealed class TimeScale
{
    /// <summary>A stretch this long without work is folded, in minutes.</summary>
    public const int FoldFrom = 180;

    /// <summary>Pixels a fold takes.</summary>
    public const double FoldWidth = 44;

    static readonly int[] HourSteps = [30, 60, 120, 180, 240, 360];

    TimeScale(ImmutableArray<TimeStretch> stretches, double width, double pixelsPerMinute)
    {
        Stretches = stretches;
        Width = width;
        PixelsPerMinute = pixelsPerMinute;
    }

    public ImmutableArray<TimeStretch> Stretches { get; }

    public double Width { get; }

    public double PixelsPerMinute { get; }

    public IEnumerable<TimeStretch> Folds => Stretches.Where(stretch => stretch.IsFold);

    /// <param name="busy">Spans in which something happens, in any order; at least one.</param>
    /// <param name="width">Pixels for the whole, folds included.</param>
    /// <param name="margin">Minutes kept free before and after each busy stretch.</param>
    public static TimeScale Of(IEnumerable<(Minute From, Minute To)> busy, double width, int margin = 15)
    {
        var stretches = Merge(busy, margin);
        var folds = stretches.Count - 1;
        var minutes = stretches.Sum(stretch => stretch.To - stretch.From);
        var scale = Math.Max(0.1, (width - (folds * FoldWidth)) / minutes);

        var laid = ImmutableArray.CreateBuilder<TimeStretch>();
        var x = 0.0;
        for (var i = 0; i < stretches.Count; i++)
        {
            if (i > 0)
            {
                laid.Add(new TimeStretch(stretches[i - 1].To, stretches[i].From, x, FoldWidth, IsFold: true));
                x += FoldWidth;
            }

            var wide = (stretches[i].To - stretches[i].From) * scale;
            laid.Add(new TimeStretch(stretches[i].From, stretches[i].To, x, wide, IsFold: false));
            x += wide;
        }

        return new TimeScale(laid.ToImmutable(), x, scale);
    }

    /// <summary>Pixels from the left; times outside the scale come to its ends.</summary>
    public double X(Minute at)
    {
        foreach (var stretch in Stretches)
        {
            if (at <= stretch.To)
            {
                return stretch.X + (stretch.Width * Math.Max(0, at - stretch.From) / (stretch.To - stretch.From));
            }
        }

        return Width;
    }

    /// <summary>The stretch that pixel <paramref name="x"/> lies in; the later one where two meet.</summary>
    public TimeStretch StretchAt(double x) => Stretches.LastOrDefault(stretch => stretch.X <= x + 0.001, Stretches[0]);

    public Minute From => Stretches[0].From;

    public Minute To => Stretches[^1].To;

    public bool Shows(Minute at) => From <= at && at <= To;

    /// <summary>Times to write on the axis: whole hours, or every second or third where they would touch.</summary>
    public IEnumerable<Minute> Hours(TimeZoneInfo zone, double leastApart = 54)
    {
        var step = HourSteps.First(minutes => minutes == 360 || minutes * PixelsPerMinute >= leastApart);
        foreach (var stretch in Stretches.Where(stretch => !stretch.IsFold))
        {
            var local = LocalTime.Show(stretch.From, zone);
            var past = ((local.Hour * 60) + local.Minute) % step;
            for (var at = stretch.From + (past == 0 ? 0 : step - past); at <= stretch.To; at += step)
            {
                yield return at;
            }
        }
    }

    static List<(Minute From, Minute To)> Merge(IEnumerable<(Minute From, Minute To)> busy, int margin)
    {
        var merged = new List<(Minute From, Minute To)>();
        foreach (var (from, to) in busy.Select(span => (From: span.From - margin, To: span.To + margin)).OrderBy(span => span.From))
        {
            if (merged.Count > 0 && from - merged[^1].To < FoldFrom)
            {
                merged[^1] = (merged[^1].From, Minute.Later(merged[^1].To, to));
            }
            else
            {
                merged.Add((from, to));
            }
        }

        return merged;
    }
}

public readonly record struct TimeStretch(Minute From, Minute To, double X, double Width, bool IsFold);
