using CookAlong.Domain;
using CookAlong.Domain.Debrief;

namespace CookAlong.Web.Features.Debrief;

/// <summary>One scale for all bars of the timeline, 0 to 1000 from its first minute to its last.</summary>
public sealed class Strip
{
    public const int Width = 1000;

    /// <summary>What lay further back than these hours was done ahead, and would squeeze the day itself.</summary>
    const int LongestHours = 12;

    public Strip(RunDebrief debrief)
    {
        var last = debrief.Plan.Courses.Max(course => course.TableTime);
        var ends = debrief.Steps.Select(step => step.PlannedEnd).Concat(debrief.Steps.Where(step => step.Finished is not null).Select(step => Minute.Of(step.Finished!.Value)));
        var starts = debrief.Steps.Select(step => step.PlannedStart).Concat(debrief.Steps.Where(step => step.Started is not null).Select(step => Minute.Of(step.Started!.Value)));
        To = ends.Append(last).Max();
        var first = To - (LongestHours * 60);
        From = starts.Where(start => start >= first).DefaultIfEmpty(first).Min();
        Tables = [.. debrief.Courses.Select(course => course.Promised).Where(table => table > From)];
    }

    public Minute From { get; }

    public Minute To { get; }

    public IReadOnlyList<Minute> Tables { get; }

    /// <summary>Nothing of it lies on the strip.</summary>
    public bool IsBefore(StepLine step) => step.PlannedEnd <= From && (step.Finished is not { } end || Minute.Of(end) <= From);

    public int At(Minute at) => At(at.Utc);

    public int At(DateTimeOffset at) => (int)Math.Round(Width * Math.Clamp((at - From.Utc) / (To.Utc - From.Utc), 0, 1));
}
