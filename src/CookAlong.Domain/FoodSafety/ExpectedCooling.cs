using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.FoodSafety;

/// <summary>How a hot food is put away.</summary>
public enum Cover
{
    /// <summary>Open to the moving air of a fridge.</summary>
    Bare,

    /// <summary>In film, foil or a closed box.</summary>
    Wrapped,
}

/// <summary>
/// How long food will take to cool, before it is put away. As slow as it may be: solid, round, in still air, nothing lost by drying.
/// Measured on cooked turkey roasts from 57 to 21 °C: 6.2 h whole and wrapped, 2.3 h quartered, none within 2 h (J. Food Prot.
/// 69(1), 2006).
/// </summary>
/// <param name="First">From the rule's upper to its middle temperature; null = more than two days.</param>
/// <param name="All">From its upper to its lowest; null = more than two days, or the air is not cold enough.</param>
/// <param name="InTime">Within the rule, by this reckoning; a thermometer decides.</param>
public sealed record ExpectedCooling(TimeSpan? First, TimeSpan? All, bool InTime)
{
    static readonly TimeSpan Longest = TimeSpan.FromDays(2);

    /// <summary>W/(m² K), free convection and radiation, and the same through a wrapping; own estimate, textbooks have 5 to 20 (from memory).</summary>
    static double Coefficient(Cover cover) => cover switch
    {
        Cover.Bare => 9,
        Cover.Wrapped => 5,
        _ => throw new System.Diagnostics.UnreachableException(cover.ToString()),
    };

    /// <summary>A piece of meat of so many kilograms, above 0.</summary>
    /// <param name="airCelsius">Of the place it cools in.</param>
    public static ExpectedCooling OfPiece(double kilograms, Cover cover, double airCelsius, TwoStageCooling rule) =>
        // A ball of meat of 1,060 kg/m³.
        Of(Body.Sphere(Math.Cbrt(3 * kilograms / (4 * Math.PI * 1060))), cover, airCelsius, rule);

    /// <summary>A stew, rice or sliced meat, so many metres deep in its dish, cooled from above and below.</summary>
    public static ExpectedCooling OfLayer(double deep, Cover cover, double airCelsius, TwoStageCooling rule) =>
        Of(Body.Slab(deep / 2), cover, airCelsius, rule);

    static ExpectedCooling Of(Body body, Cover cover, double air, TwoStageCooling rule)
    {
        var food = new Conduction(body, Substance.Of(Composition.LeanMeat), rule.From, 20);
        var (seconds, first, all) = (0.0, (TimeSpan?)null, (TimeSpan?)null);
        while (all is null && seconds < Longest.TotalSeconds)
        {
            food.Step(new Surface(air, Coefficient(cover), 0), 60);
            seconds += 60;
            var now = TimeSpan.FromSeconds(seconds);
            first ??= food.Core <= rule.Middle ? now : null;
            all ??= food.Core <= rule.To ? now : null;
        }

        return new(first, all, first <= rule.FirstWithin && all <= rule.AllWithin);
    }
}
