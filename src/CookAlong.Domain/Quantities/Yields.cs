using System.Collections.Frozen;

namespace CookAlong.Domain.Quantities;

/// <summary>
/// What is left of a vegetable when it is peeled and trimmed: edible part of what was bought, 0 to 1.
/// Armed Forces Recipe Service (2003), table of edible portions.
/// </summary>
public static class Yields
{
    static readonly FrozenDictionary<string, decimal> left = new Dictionary<string, decimal>(StringComparer.Ordinal)
    {
        ["potato"] = 0.814m,
        ["carrot"] = 0.816m,
        ["onion"] = 0.901m,
        ["cabbage"] = 0.8m,
        ["celery"] = 0.731m,
        ["swede"] = 0.851m,
        ["rutabaga"] = 0.851m,
        ["banana"] = 0.65m,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    static decimal? Of(string food) => FoodNames.Words(FoodNames.Head(food)) is [.., var last] && left.TryGetValue(last, out var part) ? part : null;

    /// <summary>What to buy for so much of it peeled and trimmed; null when nobody measured its peel: then nothing is added.</summary>
    public static Amount? ToBuy(string food, Amount trimmed) => Of(food) is { } part ? trimmed * (1 / part) : null;
}
