using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Tests.Doneness.Heat;

/// <summary>
/// Choi and Okos 1986 (ASHRAE Handbook Refrigeration 2006, chapter 9), worked out separately; and measured diffusivities of beef,
/// 1.23e-7 (chuck) and 1.33e-7 m²/s (round), printed after ASHRAE.
/// </summary>
public sealed class CompositionTests
{
    [Theory]
    [InlineData(false, 5, 3.5693, 1062.45, .4967, 1.310)]
    [InlineData(false, 20, 3.5745, 1059.98, .5184, 1.368)]
    [InlineData(false, 60, 3.5964, 1046.46, .5639, 1.498)]
    [InlineData(true, 5, 3.2689, 1032.12, .4294, 1.273)]
    [InlineData(true, 20, 3.2771, 1028.74, .4453, 1.321)]
    [InlineData(true, 60, 3.3031, 1014.41, .4780, 1.427)]
    public void Meat_stores_and_conducts_heat_as_its_parts_do(bool isFatty, double celsius, double heat, double density, double conductivity, double diffusivity)
    {
        var meat = (isFatty ? Composition.FattyMeat : Composition.LeanMeat).At(celsius);
        Assert.Equal(heat, meat.SpecificHeat / 1000, 0.0002);
        Assert.Equal(density, meat.Density, 0.02);
        Assert.Equal(conductivity, meat.Conductivity, 0.0002);
        Assert.Equal(diffusivity, meat.Diffusivity * 1e7, 0.002);
    }

    [Fact]
    public void Meat_lies_near_what_was_measured_of_beef() =>
        Assert.All([Composition.FattyMeat, Composition.LeanMeat], meat => Assert.InRange(meat.At(10).Diffusivity * 1e7, 1.23, 1.35));
}
