using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Wording;

// The end of a meal, whether or not everything is done.
public sealed partial class Words
{
    /// <summary>Common advice of food authorities: food is not cooked in part, cooled and finished later.</summary>
    public const string HalfCooked =
        "Half-cooked meat or stuffing does not keep: cook it through (the thermometer decides) or throw it away. " + Leftovers;

    public const string Leftovers = "Leftovers: cool them quickly, then into the fridge, as your local food authority advises.";

    public const string AllDone = "Everything is done";

    /// <summary>Where what is done goes, and when.</summary>
    public string ToTheTable(LiveView view) =>
        view.Next.FirstOrDefault(line => line.Call?.Kind == CallKind.Table) is { } table ? $"It waits for the table, at {clock.Show(table.At)}." : "Take it to the table.";

    /// <summary>What ending now means, before anybody does it.</summary>
    public IEnumerable<string> Ending(LiveView view)
    {
        yield return view.LeftOpen == 0 ? "Every job is done." : $"{Jobs(view.LeftOpen)} not done. No screen will call them any more.";
        if (OnTheHeat(view) is { } hot)
        {
            yield return $"Still on the heat: {hot}. See to it yourself, and turn off what nobody needs.";
        }

        yield return "What was done stays written down, and this meal can be started again.";
    }

    /// <summary>What was done and what was not, once it is over.</summary>
    public static string Ended(LiveView view) =>
        $"{Jobs(view.Board.Done.Length)} done{(view.LeftOpen == 0 ? "" : $", {view.LeftOpen} not")}. The board stays as it was; nothing more can be changed.";

    /// <summary>Null when nothing is.</summary>
    public string? OnTheHeat(LiveView view) => view.OnTheHeat.ToList() is { Count: > 0 } hot ? And([.. hot.Select(card => $"{card.Dish.Name} ({Where(card)})")]) : null;

    public string Served(BoardCourse course) =>
        course.Expected > course.Promised ? $"promised for {clock.Show(course.Promised)}" : "as promised";

    static string Jobs(int count) => count switch
    {
        0 => "No job is",
        1 => "1 job is",
        _ => $"{count} jobs are",
    };

    static string Where(BoardCard card) => card.Place switch
    {
        { Oven: not null } => "in the oven",
        { Grill: not null } => "under the grill",
        _ => "on a ring",
    };
}
