namespace CookAlong.Domain.FoodSafety;

/// <summary>Where a limit or a rule stands, so that anybody can look it up and a page can show it.</summary>
/// <param name="Year">Of the edition seen; null where the page has none.</param>
/// <param name="Place">Table, section or page within it.</param>
public sealed record Source(string Publisher, string Title, int? Year, string Place)
{
    /// <summary>Nobody looked at a copy of it: the value is remembered, and a page says so.</summary>
    public bool FromMemory { get; init; }
}
