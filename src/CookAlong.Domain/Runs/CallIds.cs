using System.Globalization;

namespace CookAlong.Domain.Runs;

/// <summary>
/// Names of calls, "kind:what" and what makes it ring anew: minutes added to a step ("out:goose-roast:+10"), so that
/// having acknowledged the first time does not silence the second.
/// </summary>
static class CallIds
{
    public static CallId In(StepId step) => new($"in:{step}");

    public static CallId Out(StepId step, int extraMinutes) => new($"out:{step}{Added(extraMinutes)}");

    public static CallId Begin(StepId step) => new($"begin:{step}");

    public static CallId Over(StepId step, int extraMinutes) => new($"over:{step}{Added(extraMinutes)}");

    public static CallId Tend(TendTurn turn) => new(string.Create(CultureInfo.InvariantCulture, $"tend:{turn.Step}:{turn.Tend}:{turn.Turn}"));

    public static CallId Dial(OvenId oven, Minute planned) => new(string.Create(CultureInfo.InvariantCulture, $"dial:{oven}:{planned.SinceEpoch}"));

    public static CallId Pause(long sequence) => new(string.Create(CultureInfo.InvariantCulture, $"pause:{sequence}"));

    public static CallId Table(CourseId course) => new($"table:{course}");

    public static bool IsAbout(CallId call, StepId step)
    {
        var what = call.Value[(call.Value.IndexOf(':', StringComparison.Ordinal) + 1)..];
        return !call.Value.StartsWith("dial:", StringComparison.Ordinal) && !call.Value.StartsWith("table:", StringComparison.Ordinal)
            && (what == step.Value || what.StartsWith(step.Value + ":", StringComparison.Ordinal));
    }

    static string Added(int minutes) => minutes == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $":+{minutes}");
}
