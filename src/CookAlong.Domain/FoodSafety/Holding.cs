using System.Collections.Immutable;
using CookAlong.Domain.Quantities;
using static CookAlong.Domain.FoodSafety.Sources;

namespace CookAlong.Domain.FoodSafety;

/// <summary>Keeping food hot, reheating it, and leaving it out.</summary>
public static class Holding
{
    public static ImmutableArray<Limit> AllTemperatures => [UkHot, UsHot, UkReheat, ScotsReheat, UsReheat, UkFridge, UsFridge];

    public static ImmutableArray<TimeLimit> AllTimes => [UkBelowHot, UsOut, UsOutHot];

    static readonly Limit UkHot = new("uk-hot", 63, null, UkHygiene);
    static readonly Limit UsHot = new("us-hot", OvenScale.Celsius(fahrenheit: 140), null, UsHome);
    static readonly Limit UkReheat = new("uk-reheat", 70, TimeSpan.FromMinutes(2), UkCooking);
    static readonly Limit ScotsReheat = new("scots-reheat", 82, null, Scottish);
    static readonly Limit UsReheat = new("us-reheat", OvenScale.Celsius(fahrenheit: 165), null, UsChart);
    static readonly Limit UkFridge = new("uk-fridge", 8, null, UkChill);
    static readonly Limit UsFridge = new("us-fridge", OvenScale.Celsius(fahrenheit: 40), null, UsHome);
    static readonly TimeLimit UkBelowHot = new("uk-below-hot", TimeSpan.Zero, TimeSpan.FromHours(2), UkHygiene);
    static readonly TimeLimit UsOut = new("us-out", TimeSpan.Zero, TimeSpan.FromHours(2), UsHome);
    static readonly TimeLimit UsOutHot = new("us-out-hot", TimeSpan.Zero, TimeSpan.FromHours(1), UsHome);

    /// <summary>What is kept hot stays at or above it: 63 °C by UK law, 60 °C (140 °F) by the USDA's advice to homes.</summary>
    public static Published<Limit> Hot(Region region) => Pick(region, UkHot, UkHot, UsHot);

    /// <summary>All through, before it is served again.</summary>
    public static Published<Limit> Reheated(Region region) => Pick(region, UkReheat, ScotsReheat, UsReheat);

    /// <summary>The most a fridge may have. 8 °C is UK law; its advice is 5.</summary>
    public static Published<Limit> Fridge(Region region) => Pick(region, UkFridge, UkFridge, UsFridge);

    /// <summary>How long food may stand below hot and above cold, once and all together.</summary>
    /// <param name="roomCelsius">Above 32 °C (90 °F) the United States allow half.</param>
    public static Published<TimeLimit> Out(Region region, double roomCelsius) =>
        Pick(region, UkBelowHot, UkBelowHot, roomCelsius > OvenScale.Celsius(fahrenheit: 90) ? UsOutHot : UsOut);

    static Published<T> Pick<T>(Region region, T kingdom, T scotland, T states) => region switch
    {
        Region.UnitedKingdom => new Published<T>.Is(kingdom),
        Region.Scotland => new Published<T>.Is(scotland),
        Region.UnitedStates => new Published<T>.Is(states),
        Region.Canada => new Published<T>.None(region),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };
}
