using CookAlong.Domain.Planning;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.PlanFiles;

/// <summary>The leans by the names they have in plan files and on the command line.</summary>
public static class LeanWords
{
    public static IReadOnlyDictionary<string, Leans> All { get; } = new Dictionary<string, Leans>(StringComparer.Ordinal)
    {
        ["start-later"] = Leans.StartLater,
        ["calm-end"] = Leans.CalmEnd,
        ["fewer-dial-turns"] = Leans.FewerDialTurns,
        ["wash-up"] = Leans.WashUp,
    };

    /// <summary>The names of those that are on.</summary>
    public static IEnumerable<string> Of(Leans leans) => All.Where(one => leans.HasFlag(one.Value)).Select(one => one.Key);

    /// <summary>Null when it names none.</summary>
    public static Leans? Named(string word) => All.TryGetValue(word, out var lean) ? lean : null;

    internal static Leans Read(Place cost)
    {
        var leans = Leans.None;
        foreach (var (text, place) in cost.Texts("leans", All.Count))
        {
            if (Named(text) is { } lean)
            {
                leans |= lean;
            }
            else
            {
                place.Note($"There is no lean \"{Place.Short(text)}\".", $"Write any of: {string.Join(", ", All.Keys)}.");
            }
        }

        return leans;
    }
}
