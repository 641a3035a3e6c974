using System.Globalization;
using CookAlong.Domain.Tests.Debrief.Learning;

namespace CookAlong.Benchmarks;

/// <summary>How well the next time of a step is foretold from its k last ones, on steps timed on real people.</summary>
static class LearningFigures
{
    public static IEnumerable<(string What, string Figure)> Measure() => !TimedSteps.IsThere
        ? [("learning", $"skipped: {TimedSteps.Missing}")]
        : new[] { 1, 3, 5 }.Select(k =>
        {
            var told = TimedSteps.Foretell(k);
            return ($"next recording of a step from {k} before it ({told.Count} foretold)", string.Create(CultureInfo.InvariantCulture,
                $"range of 8 in 10 holds {100 * told.Held:F1} %; likely time off by {told.Error:F1} s, average of all steps {told.OfAverage:F1} s, first of the {k} {told.OfFirst:F1} s, average of the {k} {told.OfOwnAverage:F1} s"));
        });
}
