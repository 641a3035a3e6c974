using System.Collections.Immutable;
using CookAlong.Domain.Debrief;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Meals;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief.Pictures;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Meals;

namespace CookAlong.Web.Features.Debrief;

/// <summary>What the page about one run shows.</summary>
/// <param name="Meal">The meal's row; it may be gone.</param>
/// <param name="Notes">By dish; "" = the whole meal.</param>
/// <param name="Lessons">Steps of this run that were timed, the most surprising first.</param>
/// <param name="Kinds">What the household's pace is at kinds of work, where enough was seen.</param>
/// <param name="People">The same for people.</param>
public sealed record DebriefView(
    LiveView Live,
    Guid Meal,
    RunDebrief Debrief,
    IReadOnlyDictionary<string, DebriefNoteRow> Notes,
    ImmutableArray<Lesson> Lessons,
    ImmutableArray<Pace> Kinds,
    ImmutableArray<Pace> People)
{
    /// <summary>The earliest first.</summary>
    public ImmutableArray<DishPhoto> Photos { get; init; } = [];

    /// <summary>It came with the demo.</summary>
    public bool IsInvented => EarlierMeals.Invented.ContainsKey(Live.Run.Value);

    public bool IsRehearsal => Live.Rate is not null;

    public bool MayWrite => Live.IsHost && !IsRehearsal;

    public string VerdictOf(string dish) => Notes.GetValueOrDefault(dish)?.Verdict ?? "";

    public string NoteOf(string dish) => Notes.GetValueOrDefault(dish)?.Note ?? "";
}

/// <summary>What is known of one step by now.</summary>
/// <param name="Written">Whole minutes as the recipe has them.</param>
/// <param name="Minutes">Whole minutes as it would be planned with what was learned.</param>
/// <param name="IsUsed">It is planned so already, with these or earlier figures.</param>
public sealed record Lesson(Dish Dish, Step Step, LearnedTime Learned, Durations Written, Durations Minutes, bool IsUsed);
