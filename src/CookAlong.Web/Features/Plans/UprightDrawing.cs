using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>One lane as an upright day for a narrow screen: time runs down, bars on the left to scale, words on the right, none over another.</summary>
public sealed record UprightDrawing(TimeScale Scale, ImmutableArray<UprightBar> Bars, ImmutableArray<UprightNote> Notes, double BarsLeft, double BarsWidth, double NotesLeft, double Height, string? Curve)
{
    public const double LabelSize = 15;
    public const double LineHeight = 19;
    const double HoursWidth = 50;
    const double ShelfWidth = 26;
    const double PixelsPerMinute = 2;

    public static UprightDrawing Of(Meal meal, Plan plan, Lane lane, double width)
    {
        var busy = Busy(plan, lane).ToList();
        var scale = TimeScale.Of(busy, HeightOf(busy));
        var barsWidth = lane.Kind == LaneKind.Oven ? (lane.Rows * ShelfWidth) + 8 : 34;
        var notesLeft = HoursWidth + barsWidth + 22;
        var row = lane.Kind == LaneKind.Oven ? ShelfWidth : barsWidth - 8;
        var bars = lane.Bars.Select(bar =>
        {
            var y = scale.X(bar.From);
            return new UprightBar(bar, HoursWidth + 4 + (bar.Row * row), y, (bar.RowSpan * row) - 2, Math.Max(4, scale.X(bar.To) - y - 1));
        });

        var letters = (int)((width - notesLeft) / (LabelSize * 0.54));
        var notes = Place(NotesOf(meal, plan, lane).OrderBy(note => note.At).ThenBy(note => note.Kind), scale, letters);
        return new UprightDrawing(scale, [.. bars], notes, HoursWidth, barsWidth, notesLeft, Math.Max(scale.Width, notes.Select(note => note.Y + (note.Lines.Length * LineHeight)).DefaultIfEmpty(0).Max()) + 12, CurveOf(lane, scale, barsWidth));
    }

    /// <summary>Only this lane's own times: an oven that is cold all of the prep day takes no room for it.</summary>
    static IEnumerable<(Minute From, Minute To)> Busy(Plan plan, Lane lane) =>
    [
        .. lane.Bars.Select(bar => (bar.From, bar.To)),
        .. lane.Programme?.Dial.Select(dial => (dial.At, dial.At)) ?? [],
        .. plan.Courses.Select(course => (course.TableTime, course.TableTime)),
    ];

    /// <summary>Closes the curve's area along the cold edge of the box, where the last point stands.</summary>
    public string CurveFoot => Curve is { Length: > 0 } points ? $"{HoursWidth:0},{points[(points.LastIndexOf(',') + 1)..]}" : "";

    static double HeightOf(List<(Minute From, Minute To)> busy)
    {
        var probe = TimeScale.Of(busy, 1000);
        return (probe.Stretches.Where(stretch => !stretch.IsFold).Sum(stretch => stretch.To - stretch.From) * PixelsPerMinute) + (probe.Folds.Count() * TimeScale.FoldWidth);
    }

    static IEnumerable<(Minute At, string Words, UprightKind Kind, Bar? Bar)> NotesOf(Meal meal, Plan plan, Lane lane) =>
    [
        .. lane.Bars.DistinctBy(bar => (bar.Step, bar.From, bar.Kind)).Select(bar => (bar.From, bar.Label, UprightKind.Bar, (Bar?)bar)),
        .. lane.Programme?.Dial.Select(dial => (dial.At, dial.Celsius == 0 ? "off" : $"dial to {dial.Celsius}°", UprightKind.Dial, (Bar?)null)) ?? [],
        .. plan.Courses.Select(course => (course.TableTime, $"{meal.Courses.Single(one => one.Id == course.Course).Name} on the table", UprightKind.Table, (Bar?)null)),
        .. meal.Steps.Where(step => step.PauseAfter).Select(step => (plan.Step(step.Id).End, "pause point", UprightKind.Pause, (Bar?)null)),
    ];

    /// <summary>The oven's temperature as a curve from the left edge of its box, cold, to the right; null for other lanes.</summary>
    static string? CurveOf(Lane lane, TimeScale scale, double width) => lane.Programme is not { } programme ? null : string.Join(' ', programme.Points
        .Where(point => scale.Shows(point.At))
        .Select(point => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{HoursWidth + (width * point.Celsius / OvenCurve.Full):0.#},{scale.X(point.At):0.#}")));

    static ImmutableArray<UprightNote> Place(IEnumerable<(Minute At, string Words, UprightKind Kind, Bar? Bar)> notes, TimeScale scale, int letters)
    {
        var placed = ImmutableArray.CreateBuilder<UprightNote>();
        var freeFrom = 0.0;
        foreach (var (at, words, kind, bar) in notes)
        {
            var y = Math.Max(scale.X(at), freeFrom);
            // The clock stands before the first line, so that one is shorter.
            var lines = Wrap(words, Math.Max(8, letters - 6));
            placed.Add(new UprightNote(at, lines, kind, bar, scale.X(at), y));
            freeFrom = y + (lines.Length * LineHeight) + 3;
        }

        return placed.ToImmutable();
    }

    static ImmutableArray<string> Wrap(string words, int letters)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var line = "";
        foreach (var word in words.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > letters)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        lines.Add(line);
        return lines.ToImmutable();
    }
}

public sealed record UprightBar(Bar Bar, double X, double Y, double Width, double Height);

/// <param name="PointY">Where on the scale it belongs.</param>
/// <param name="Y">Where its words begin, moved down where others stand.</param>
public sealed record UprightNote(Minute At, ImmutableArray<string> Lines, UprightKind Kind, Bar? Bar, double PointY, double Y);

public enum UprightKind { Dial, Bar, Pause, Table }
