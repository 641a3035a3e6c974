namespace CookAlong.Domain.Quantities;

/// <summary>By how much a fan oven is set lower. Makers say different things; a household takes exactly one of them.</summary>
public enum FanRule
{
    /// <summary>20 °C lower: British packs and butchers' guides.</summary>
    Minus20,

    /// <summary>25 °C lower: some makers' books.</summary>
    Minus25,
}

/// <summary>Oven temperatures on the scales that recipes use. Celsius on a conventional oven is what everything is kept in.</summary>
/// <param name="ReadsHighBy">°C that this oven's dial shows above a thermometer inside; negative when it runs hotter than it says. From the household's own measuring.</param>
public sealed record OvenScale(FanRule Rule, int ReadsHighBy = 0)
{
    /// <summary>The one rule that is taken everywhere here, until a household measures its own oven.</summary>
    public static OvenScale Usual { get; } = new(FanRule.Minus20);

    int Less => Rule switch
    {
        FanRule.Minus20 => 20,
        FanRule.Minus25 => 25,
        _ => throw new ArgumentOutOfRangeException(nameof(Rule)),
    };

    /// <summary>What to set this oven's dial to for a recipe's conventional temperature.</summary>
    public int Dial(int conventional, bool fan) => conventional - (fan ? Less : 0) + ReadsHighBy;

    /// <summary>The conventional temperature that this oven's dial stands for. Undoes <see cref="Dial"/>.</summary>
    public int Conventional(int dial, bool fan) => dial + (fan ? Less : 0) - ReadsHighBy;

    /// <summary>NIST SP 811 (2008), appendix B.</summary>
    public static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    public static double Fahrenheit(double celsius) => (celsius * 1.8) + 32;

    /// <summary>°C of a gas mark: 275 °F + 25 (G - 1) from 1 on, 25 °F lower for each halving below. 1/4 to 10; null for a mark that no dial has.</summary>
    public static double? CelsiusOfGas(double mark) => mark switch
    {
        0.25 => Celsius(225),
        0.5 => Celsius(250),
        >= 1 and <= 10 when mark == Math.Floor(mark) => Celsius(275 + (25 * (mark - 1))),
        _ => null,
    };
}
