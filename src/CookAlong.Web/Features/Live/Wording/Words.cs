using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Features.Live.Wording;

/// <summary>Every sentence of the live kitchen, made here and nowhere else.</summary>
/// <param name="people">Who is in the run; a name the meal does not know (hands nobody planned for) is found here.</param>
/// <param name="now">When they are read: times of other days are said with their day. Null where that does not matter.</param>
public sealed partial class Words(Meal meal, ImmutableArray<BoardPerson> people = default, DateTimeOffset? now = null)
{
    readonly WallClock clock = new(meal.TimeZone, now);

    public string Name(HelperId helper) =>
        (people.IsDefault ? null : people.FirstOrDefault(one => one.Helper == helper)?.Name)
        ?? meal.Helpers.FirstOrDefault(one => one.Id == helper)?.Name
        ?? "somebody else";

    public string Names(IEnumerable<HelperId> helpers) => And([.. helpers.Select(Name)]);

    /// <summary>The step's headline, to be spoken of inside a sentence.</summary>
    string Step(StepId id) => meal.Steps.FirstOrDefault(step => step.Id == id) is { } step ? $"“{step.Text}”" : "that step";

    string At(DateTimeOffset at) => clock.Show(at);

    static string And(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "nobody",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}",
    };

    static string Minutes(int minutes) => minutes == 1 ? "1 minute" : $"{minutes} minutes";
}
