using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.FoodSafety;

/// <summary>A cooling limit in two stages, for the middle of the food.</summary>
/// <param name="FirstWithin">From <paramref name="From"/> to <paramref name="Middle"/> °C.</param>
/// <param name="AllWithin">From <paramref name="From"/> to <paramref name="To"/> °C, both stages together.</param>
public sealed record TwoStageCooling(string Id, double From, double Middle, double To, TimeSpan FirstWithin, TimeSpan AllWithin, Source Source)
{
    public static TwoStageCooling FoodCode { get; } = new("us-cooling", OvenScale.Celsius(fahrenheit: 135), OvenScale.Celsius(fahrenheit: 70), OvenScale.Celsius(fahrenheit: 41), TimeSpan.FromHours(2), TimeSpan.FromHours(6), Sources.FoodCode);

    /// <summary>Only the United States print one that a home can measure; elsewhere the time until the fridge counts (<see cref="Leftovers"/>).</summary>
    public static Published<TwoStageCooling> Of(Region region) => region switch
    {
        Region.UnitedStates => new Published<TwoStageCooling>.Is(FoodCode),
        Region.UnitedKingdom or Region.Scotland or Region.Canada => new Published<TwoStageCooling>.None(region),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };
}
