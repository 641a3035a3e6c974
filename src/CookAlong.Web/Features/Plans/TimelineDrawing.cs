using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>Everything the timeline's picture needs, in pixels from its top left corner. Lane names stand outside, to its left.</summary>
public sealed class TimelineDrawing
{
    public const double LabelSize = 14;
    public const double FlagHeight = 28;
    public const double HoursHeight = 26;
    public const double RowHeight = 28;
    public const double ShelfHeight = 38;
    public const double DialHeight = 38;
    public const double StripHeight = 26;
    public const double WordsHeight = 19;
    public const double DayHeight = 24;
    const double FootHeight = 26;
    const double LanePad = 6;
    const double Gap = 6;
    const double GroupGap = 14;
    const int WordsRows = 4;

    TimelineDrawing(TimeScale scale, ImmutableArray<TableFlag> flags, ImmutableArray<DrawnLane> lanes, ImmutableArray<Minute> pauses, double top, double bottom)
    {
        Scale = scale;
        Flags = flags;
        Lanes = lanes;
        Pauses = pauses;
        Top = top;
        Bottom = bottom;
    }

    public TimeScale Scale { get; }

    public ImmutableArray<TableFlag> Flags { get; }

    public ImmutableArray<DrawnLane> Lanes { get; }

    /// <summary>Where the lanes begin; flags and hours stand above.</summary>
    public double Top { get; }

    /// <summary>Where the lanes end; pause points and now have their words below.</summary>
    public double Bottom { get; }

    public double Height => Bottom + FootHeight;

    /// <summary>When everyone waits until the host says go on.</summary>
    public ImmutableArray<Minute> Pauses { get; }

    public double FlagsHeight => FlagRows(Flags) * FlagHeight;

    public double DaysHeight => Scale.Folds.Any() ? DayHeight : 0;

    /// <param name="day">Only this day; null = all of it.</param>
    public static TimelineDrawing Of(Meal meal, Plan plan, double width, DateOnly? day = null)
    {
        bool IsShown(Minute at) => day is null || DateOnly.FromDateTime(LocalTime.Show(at, meal.TimeZone).Date) == day;

        var scale = TimeScale.Of(Plans.Lanes.Busy(meal, plan).Where(span => IsShown(span.From)), width);
        var flags = FlagsOf(meal, plan, scale);
        var top = (FlagRows(flags) * FlagHeight) + HoursHeight + (scale.Folds.Any() ? DayHeight : 0);
        var lanes = ImmutableArray.CreateBuilder<DrawnLane>();
        var y = top;
        foreach (var lane in Plans.Lanes.Of(meal, plan))
        {
            y += lanes.Count == 0 ? 0 : lanes[^1].Lane.Kind == lane.Kind || lane.Kind is LaneKind.Grill or LaneKind.Appliance ? Gap : GroupGap;
            var drawn = Draw(lane with { Bars = [.. lane.Bars.Where(bar => bar.To > scale.From && bar.From < scale.To)] }, scale, y);
            lanes.Add(drawn);
            y += drawn.Height;
        }

        var pauses = meal.Steps.Where(step => step.PauseAfter).Select(step => plan.Step(step.Id).End).Where(scale.Shows).Order();
        return new TimelineDrawing(scale, flags, lanes.ToImmutable(), [.. pauses], top, y + Gap);
    }

    static DrawnLane Draw(Lane lane, TimeScale scale, double y)
    {
        switch (lane.Kind)
        {
            case LaneKind.Oven:
                var height = DialHeight + (lane.Rows * ShelfHeight) + LanePad;
                return new DrawnLane(
                    lane, y, height, Labels.InPlace(lane.Bars, scale, LabelSize, lines: 2), DialHeight, ShelfHeight,
                    lane.Programme is { } programme ? OvenCurve.Of(programme, scale, height) : null);
            case LaneKind.Person:
                var jobs = Labels.Below(lane.Bars, scale, LabelSize, WordsRows);
                var rows = jobs.Where(job => job.Place is LabelPlace.Below or LabelPlace.BelowBackward).Select(job => job.WordsRow + 1).DefaultIfEmpty(1).Max();
                return new DrawnLane(lane, y, StripHeight + (rows * WordsHeight) + (2 * LanePad), jobs, LanePad, StripHeight, Curve: null);
            case LaneKind.Ring or LaneKind.Grill or LaneKind.Appliance:
                return new DrawnLane(lane, y, RowHeight + LanePad, Labels.InPlace(lane.Bars, scale, LabelSize), LanePad / 2, RowHeight, Curve: null);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    static int FlagRows(ImmutableArray<TableFlag> flags) => flags.Select(flag => flag.Row + 1).DefaultIfEmpty(0).Max();

    static ImmutableArray<TableFlag> FlagsOf(Meal meal, Plan plan, TimeScale scale)
    {
        var flags = ImmutableArray.CreateBuilder<TableFlag>();
        foreach (var course in plan.Courses.Where(course => scale.Shows(course.TableTime)).OrderBy(course => course.TableTime))
        {
            var words = $"{meal.Courses.Single(one => one.Id == course.Course).Name} {PlaceNames.Clock(course.TableTime, meal.TimeZone)}";
            var wide = Labels.WidthOf(words, LabelSize) + 24;
            var at = scale.X(course.TableTime);
            var left = Math.Clamp(at - (wide / 2), 0, Math.Max(0, scale.Width - wide));
            var row = Enumerable.Range(0, flags.Count + 1).First(row => flags.All(flag => flag.Row != row || flag.Left + flag.Width + 4 <= left));
            flags.Add(new TableFlag(words, at, left, wide, row));
        }

        return flags.ToImmutable();
    }
}

/// <param name="Inset">From the lane's top to its first row.</param>
public sealed record DrawnLane(Lane Lane, double Y, double Height, ImmutableArray<PlacedBar> Bars, double Inset, double RowHeight, OvenCurve? Curve)
{
    public double TopOf(PlacedBar bar) => Y + Inset + (bar.Bar.Row * RowHeight);
}

/// <summary>A table time: a line at <paramref name="At"/> with a flag above the hours, moved inward at the edges and up where two would meet.</summary>
public sealed record TableFlag(string Words, double At, double Left, double Width, int Row);
