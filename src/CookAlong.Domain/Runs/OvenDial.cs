using System.Collections.Immutable;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>The turns of an oven's dial, moved with the work they are for.</summary>
static class OvenDial
{
    /// <summary>One for each of the programme's settings, in their order.</summary>
    public static ImmutableArray<DialSetting> Of(Run run, Expectation expected, OvenProgramme oven) =>
        [.. oven.Dial.Select(setting => setting with { At = setting.At + DelayOf(run, expected, oven, setting) })];

    /// <summary>Something that needed this setting went in, so it was turned.</summary>
    public static bool WasNeeded(Run run, OvenProgramme oven, DialSetting setting) =>
        UsesFrom(run, oven, setting).Any(step => run.StateOf(step.Step).Started is not null);

    /// <summary>
    /// A setting waits as long as the first thing it is for; the last one, off, as long as what is still inside.
    /// One that somebody has acknowledged was turned at its planned time and moves no more.
    /// </summary>
    static int DelayOf(Run run, Expectation expected, OvenProgramme oven, DialSetting setting)
    {
        if (run.Acknowledged.ContainsKey(CallIds.Dial(oven.Oven, setting.At)) || WasNeeded(run, oven, setting))
        {
            return 0;
        }

        if (UsesFrom(run, oven, setting).FirstOrDefault() is { } first)
        {
            return Math.Max(0, Minute.Of(expected.Starts(first.Step)) - first.Start);
        }

        return run.Plan.Steps.Where(step => step.Oven == oven.Oven && run.StateOf(step.Step).Finished is null)
            .Select(step => expected.Retimed.Steps[step.Step].End - step.End)
            .Append(0)
            .Max();
    }

    static IEnumerable<PlannedStep> UsesFrom(Run run, OvenProgramme oven, DialSetting setting) =>
        run.Plan.Steps.Where(step => step.Oven == oven.Oven && step.Start >= setting.At).OrderBy(step => step.Start);
}
