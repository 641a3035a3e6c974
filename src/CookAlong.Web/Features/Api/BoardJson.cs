using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;
using CookAlong.Web.Features.Live.Wording;

namespace CookAlong.Web.Features.Api;

// Instants are milliseconds since the Unix epoch by the run's own clock, which in a rehearsal is not the wall's.

/// <param name="Rate">How fast a rehearsal's clock runs; null = the meal is cooked.</param>
/// <param name="EndedUtc">Null = it goes on.</param>
public sealed record RunLine(Guid Id, Guid Meal, string Name, long BeganUtc, long? EndedUtc, int? Rate);

/// <summary>A run's board: what every screen of the kitchen shows.</summary>
/// <param name="Sequence">The last event it knows of.</param>
/// <param name="BreathingRoomMinutes">How long the whole kitchen may pause now and still serve on time.</param>
/// <param name="LateMinutes">How late the table would be if nobody changed the plan; 0 = on time.</param>
/// <param name="HeldSinceUtc">Everything waits since then, at a pause point or because the host said so; null = it does not.</param>
/// <param name="Offer">A new plan that waits for the host's word; null = none. Taken by {"kind":"acceptPlan","plan":OFFER}.</param>
public sealed record BoardJson(
    long Sequence,
    long ServerNow,
    bool IsOver,
    int BreathingRoomMinutes,
    int LateMinutes,
    long? HeldSinceUtc,
    Guid? Offer,
    IReadOnlyList<CourseJson> Courses,
    IReadOnlyList<CardJson> Now,
    IReadOnlyList<CardJson> Next,
    IReadOnlyList<CardJson> Done,
    IReadOnlyList<OvenJson> Ovens,
    IReadOnlyList<PersonJson> People)
{
    public static BoardJson Of(Run run, Board board, Guid? offer)
    {
        var words = new Words(run.Meal, board.People);
        return new BoardJson(
            board.Sequence,
            Utc(board.At),
            board.IsOver,
            board.BreathingRoom,
            board.Slip?.LateMinutes ?? 0,
            board.Pause is { } pause ? Utc(pause.Since) : null,
            offer,
            [.. board.Courses.Select(course => new CourseJson(course.Course.Value, course.Name, Utc(course.Promised.Utc), Utc(course.Expected.Utc)))],
            [.. board.Now.Select(Card)],
            [.. board.Next.Select(Card)],
            [.. board.Done.Select(Card)],
            [.. board.Ovens.Select(oven => new OvenJson(oven.Oven.Value, oven.Name, oven.Celsius, [.. oven.Shelves.Select(tray => tray?.Card?.Step.Id.Value)]))],
            [.. board.People.Select(person => new PersonJson(person.Helper.Value, person.Name, person.IsChild, person.Person?.Value, person.IsHereNow))]);

        CardJson Card(BoardCard card) => new(
            card.Step.Id.Value,
            card.Step.Text,
            card.Dish.Id.Value,
            card.Dish.Name,
            Wire.Name(card.State),
            Utc(card.Starts),
            Utc(card.Ends),
            [.. card.Helpers.Select(helper => helper.Value)],
            card.Helpers.IsEmpty ? null : words.Names(card.Helpers),
            card.IsFree,
            card.Step.Caution,
            card.Tend is { } tend ? new TendJson(tend.Tend, tend.Turn, tend.Text) : null,
            card.Core is { } core ? new CoreJson(core.Step.Value, core.Wanted.Celsius, core.Readings.LastOrDefault()?.Celsius) : null,
            card.Call?.Id.Value);
    }

    static long Utc(DateTimeOffset at) => at.ToUnixTimeMilliseconds();
}

public sealed record CourseJson(string Id, string Name, long PromisedUtc, long ExpectedUtc);

/// <summary>One job.</summary>
/// <param name="State">waiting, due, running, over or done.</param>
/// <param name="Helpers">Whose it is; empty = free, or nobody's hands are needed.</param>
/// <param name="Who">The same by name, to be read; null = nobody.</param>
/// <param name="Caution">What can hurt somebody here; show it where the job is shown.</param>
/// <param name="Tend">Set when the card is a turn of a tend of the step, not the step itself.</param>
/// <param name="Core">Set where a thermometer decides.</param>
/// <param name="Call">The call that is due for it and unanswered.</param>
public sealed record CardJson(
    string Step,
    string Text,
    string Dish,
    string DishName,
    string State,
    long StartsUtc,
    long EndsUtc,
    IReadOnlyList<string> Helpers,
    string? Who,
    bool IsFree,
    string? Caution,
    TendJson? Tend,
    CoreJson? Core,
    string? Call);

public sealed record TendJson(int Tend, int Turn, string Text);

/// <param name="Step">The step to note readings of.</param>
/// <param name="LastCelsius">Null = no reading yet.</param>
public sealed record CoreJson(string Step, decimal WantedCelsius, decimal? LastCelsius);

/// <param name="Celsius">What the dial should stand at now; 0 = off.</param>
/// <param name="Shelves">The step on each shelf, top first; null = none.</param>
public sealed record OvenJson(string Id, string Name, int Celsius, IReadOnlyList<string?> Shelves);

/// <param name="Person">Null while nobody has joined as this helper.</param>
public sealed record PersonJson(string Helper, string Name, bool IsChild, Guid? Person, bool IsHere);
