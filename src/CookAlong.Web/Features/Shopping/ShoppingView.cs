using System.Collections.Immutable;
using CookAlong.Domain.Shopping;

namespace CookAlong.Web.Features.Shopping;

/// <summary>One line as it is shown.</summary>
/// <param name="Amount">"1.4 kg"; "" when nobody says how much.</param>
/// <param name="Price">What it cost; null = nobody wrote it down.</param>
/// <param name="Note">What else there is to say: which dishes, that more is wanted than was bought; null = nothing.</param>
public sealed record LineView(string Key, string Name, string Amount, string? Note, Mark Mark, decimal? Price, bool IsExtra);

/// <summary>What the shopping page shows.</summary>
public sealed record ShoppingView(KeptList Kept, bool IsHost, DateTimeOffset At)
{
    public string Path => $"/meals/{Kept.Meal.Row.Id}/shopping";

    public IReadOnlyList<(Aisle Aisle, ImmutableArray<LineView> Lines)> Aisles { get; } =
    [
        .. from aisle in Kept.State.Aisles
           let lines = Lines(Kept, aisle).ToImmutableArray()
           where !lines.IsEmpty
           select (aisle, lines),
    ];

    public int Open => Aisles.Where(one => one.Aisle != Aisle.AtHome).SelectMany(one => one.Lines).Count(line => line.Mark == Mark.Open);

    public Cost? Cost => Cost.Of([.. Aisles.SelectMany(one => one.Lines).Select(line => (line.Mark, line.Price))], Kept.State.Currency);

    static IEnumerable<LineView> Lines(KeptList kept, Aisle aisle)
    {
        foreach (var line in kept.List.Lines.Where(line => line.Aisle == aisle))
        {
            var amount = ShoppingWords.Amount(line);
            var (mark, before) = kept.State.Marks.GetValueOrDefault(line.Key, (Mark.Open, ""));
            // What was bought for fewer people is not enough now.
            var isOutdated = mark != Mark.Open && before != amount;
            yield return new(line.Key, line.Name, amount, ShoppingWords.Note(line, isOutdated ? (mark, before) : null), isOutdated ? Mark.Open : mark, Price(line.Key), IsExtra: false);
        }

        foreach (var extra in kept.State.Extras.Where(extra => Domain.Shopping.Aisles.Of(extra.Text, Domain.Quantities.Units.Piece) == aisle))
        {
            yield return new(extra.Key, extra.Text, "", null, kept.State.Marks.GetValueOrDefault(extra.Key).Mark, Price(extra.Key), IsExtra: true);
        }

        decimal? Price(string key) => kept.State.Prices.TryGetValue(key, out var price) ? price : null;
    }
}
