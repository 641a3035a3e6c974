using System.Globalization;

namespace CookAlong.Domain.Runs;

/// <summary>
/// Names of calls, "kind:what" and what makes it ring anew: minutes added ("out:goose-roast:+10"), a core reading that says when it is done ("out:goose-roast:core-2"), a step taken back
/// ("in:goose-roast:again-1"). A call of one name rings once and is acknowledged once, whenever its time moves to.
/// </summary>
public static class CallIds
{
    public static CallId In(StepId step, StepState state) => new($"in:{step}{Again(state)}");

    public static CallId Begin(StepId step, StepState state) => new($"begin:{step}{Again(state)}");

    public static CallId Out(StepId step, StepState state) => new($"out:{step}{Added(state)}{Again(state)}");

    public static CallId Over(StepId step, StepState state) => new($"over:{step}{Added(state)}{Again(state)}");

    public static CallId Tend(TendTurn turn, StepState state) =>
        new(string.Create(CultureInfo.InvariantCulture, $"tend:{turn.Step}:{turn.Tend}:{turn.Turn}{Again(state)}"));

    public static CallId Dial(OvenId oven, Minute planned) => new(string.Create(CultureInfo.InvariantCulture, $"dial:{oven}:{planned.SinceEpoch}"));

    public static CallId Cools(StepId step, StepState state) => new($"cools:{step}{Again(state)}");

    public static CallId Pause(long sequence) => new(string.Create(CultureInfo.InvariantCulture, $"pause:{sequence}"));

    public static CallId Table(CourseId course) => new($"table:{course}");

    public static bool IsAbout(CallId call, StepId step)
    {
        var what = call.Value[(call.Value.IndexOf(':', StringComparison.Ordinal) + 1)..];
        return !call.Value.StartsWith("dial:", StringComparison.Ordinal) && !call.Value.StartsWith("table:", StringComparison.Ordinal)
            && (what == step.Value || what.StartsWith(step.Value + ":", StringComparison.Ordinal));
    }

    static string Added(StepState state) =>
        (state.ExtraMinutes == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $":+{state.ExtraMinutes}"))
        + (state.EndsNamed.Count() is > 0 and var times ? string.Create(CultureInfo.InvariantCulture, $":core-{times}") : "");

    static string Again(StepState state) => state.Undone == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $":again-{state.Undone}");
}
