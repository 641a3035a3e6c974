namespace CookAlong.Domain.Doneness.Heat;

/// <summary>What food is made of, as mass fractions from 0 to 1 that add up to 1.</summary>
public readonly record struct Composition(double Water, double Protein, double Fat, double Carbohydrate, double Fibre, double Ash)
{
    /// <summary>Water .74, protein .23, fat .02, ash .01: the trade's usual lean meat; common practice, no source.</summary>
    public static Composition LeanMeat => new(.74, .23, .02, 0, 0, .01);

    /// <summary>Water .60, protein .18, fat .21, ash .01; common practice, no source.</summary>
    public static Composition FattyMeat => new(.60, .18, .21, 0, 0, .01);

    /// <summary>
    /// How it stores and conducts heat at <paramref name="celsius"/>, from -1 to 150 °C (unfrozen).
    /// Source: Choi and Okos, "Effects of temperature and composition on the thermal properties of foods", 1986, as printed in
    /// ASHRAE Handbook Refrigeration 2006, chapter 9, tables 1 and 2. Heat goes by mass, conductivity by volume. The density of
    /// fat, 925.59 - 0.41757 T, is from memory.
    /// </summary>
    public Thermal At(double celsius)
    {
        double mass = 0, volume = 0, heat = 0, conducted = 0;
        Add(Water, (4.1289, -9.0864e-5, 5.4731e-6), (.57109, .0017625, -6.7036e-6), (997.18, .0031439, -.0037574));
        Add(Protein, (2.0082, .0012089, -1.3129e-6), (.17881, .0011958, -2.7178e-6), (1329.9, -.5184, 0));
        Add(Fat, (1.9842, .0014733, -4.8008e-6), (.18071, -.00027604, -1.7749e-7), (925.59, -.41757, 0));
        Add(Carbohydrate, (1.5488, .0019625, -5.9399e-6), (.20141, .0013874, -4.3312e-6), (1599.1, -.31046, 0));
        Add(Fibre, (1.8459, .0018306, -4.6509e-6), (.18331, .0012497, -3.1683e-6), (1311.5, -.36589, 0));
        Add(Ash, (1.0926, .0018896, -3.6817e-6), (.32962, .0014011, -2.9069e-6), (2423.8, -.28063, 0));
        return new Thermal(mass / volume, 1000 * heat / mass, conducted / volume);

        void Add(double share, (double, double, double) specificHeat, (double, double, double) conductivity, (double, double, double) density)
        {
            var space = share / Polynomial(density);
            mass += share;
            volume += space;
            heat += share * Polynomial(specificHeat);
            conducted += space * Polynomial(conductivity);
        }

        double Polynomial((double A, double B, double C) of) => of.A + (celsius * (of.B + (celsius * of.C)));
    }
}

/// <param name="Density">kg/m³.</param>
/// <param name="SpecificHeat">J/(kg K).</param>
/// <param name="Conductivity">W/(m K).</param>
public readonly record struct Thermal(double Density, double SpecificHeat, double Conductivity)
{
    /// <summary>J/(m³ K).</summary>
    public double HeatCapacity => Density * SpecificHeat;

    /// <summary>m²/s.</summary>
    public double Diffusivity => Conductivity / HeatCapacity;
}
