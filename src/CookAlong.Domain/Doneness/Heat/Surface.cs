namespace CookAlong.Domain.Doneness.Heat;

/// <summary>How the air reaches the surface during one step of time.</summary>
/// <param name="Air">°C.</param>
/// <param name="Coefficient">W/(m² K), convection and radiation together; 0 or more.</param>
/// <param name="Wetness">
/// The option of a surface that evaporation cools: 0 = dry; 1 = free water, which the air can warm to its wet-bulb temperature and no
/// further. A roast lies between, and nearer to dry: radiation warms without carrying vapour away, and a crust forms.
/// </param>
public readonly record struct Surface(double Air, double Coefficient, double Wetness)
{
    /// <summary>The vapour that kitchen air brings into an oven, kg/m³: saturated at 12 °C; common practice, no source.</summary>
    const double Vapour = .0107;

    /// <summary>
    /// Latent heat over what a m³ of air takes to warm by a K, by the likeness of heat and mass transfer:
    /// 2.36e6 / (0.95 * 1010 * 0.86^(2/3)). Source: Incropera and DeWitt, "Fundamentals of Heat and Mass Transfer", chapter 6
    /// (Chilton-Colburn analogy, evaporative cooling), from memory.
    /// </summary>
    const double Latent = 2720;

    /// <summary>Heat into the surface, W/m², and its slope, when the surface is at <paramref name="celsius"/>.</summary>
    public (double Heat, double Slope) At(double celsius)
    {
        var (heat, slope) = (Coefficient * (Air - celsius), -Coefficient);
        if (Wetness <= 0)
        {
            return (heat, slope);
        }

        var (vapour, more) = Saturated(celsius);
        var evaporating = Wetness * Coefficient * Latent;
        return (heat - (evaporating * (vapour - Vapour)), slope - (evaporating * more));
    }

    /// <summary>
    /// Vapour over wet food in kg/m³, and its slope. Magnus form with the coefficients of Alduchov and Eskridge, J. Appl. Meteorol.
    /// 35, 1996 (from memory); it goes on growing past 100 °C, as boiling does.
    /// </summary>
    static (double Density, double Slope) Saturated(double celsius)
    {
        var (away, kelvin) = (celsius + 243.04, celsius + 273.15);
        var density = 610.94 * Math.Exp(17.625 * celsius / away) / (461.5 * kelvin);
        return (density, density * ((17.625 * 243.04 / (away * away)) - (1 / kelvin)));
    }
}
