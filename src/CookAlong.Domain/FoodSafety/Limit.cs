namespace CookAlong.Domain.FoodSafety;

/// <summary>One authority's limit, as it is published.</summary>
/// <param name="Id">Names it in tests and in a page's address.</param>
/// <param name="Celsius">°C.</param>
/// <param name="For">How long it is to be kept; null = none is named, or at once.</param>
public sealed record Limit(string Id, double Celsius, TimeSpan? For, Source Source)
{
    /// <summary>The time is a rest, off the heat and before carving.</summary>
    public bool OffTheHeat { get; init; }
}

/// <summary>A limit in time alone.</summary>
public sealed record TimeLimit(string Id, TimeSpan Least, TimeSpan Most, Source Source);

/// <summary>What an authority says, or that it says nothing here: no other region's limit takes its place.</summary>
public abstract record Published<T>
{
    public sealed record Is(T Limit) : Published<T>;

    public sealed record None(Region Region) : Published<T>;
}
