using System.Globalization;

namespace CookAlong.Domain.Quantities;

/// <summary>An amount as a cook measures it.</summary>
/// <param name="IsAbout">Rounded by more than a twentieth: the cook should know.</param>
public readonly record struct RoundedAmount(Amount Amount, bool IsAbout)
{
    /// <summary>"1 1/2 tsp", "about 3", "350 g".</summary>
    public override string ToString() => $"{(IsAbout ? "about " : "")}{CooksRounding.Number(Amount.Value, Amount.Unit)}{(Amount.Unit.Name.Length == 0 ? "" : " " + CooksRounding.UnitName(Amount))}";
}

/// <summary>
/// Rounds to what can be measured: spoons and cups by their parts, pieces by halves or wholes, weights and volumes by steps
/// of at most a fiftieth. Common practice, no source.
/// </summary>
public static class CooksRounding
{
    /// <summary>Parts of one that spoons and cups come in.</summary>
    static readonly (decimal Value, string Words)[] parts =
    [
        (0, ""), (0.125m, "1/8"), (0.25m, "1/4"), (1 / 3m, "1/3"), (0.5m, "1/2"), (2 / 3m, "2/3"), (0.75m, "3/4"), (1, ""),
    ];

    public static RoundedAmount Round(Amount amount)
    {
        var told = Readable(amount);
        var value = told.Unit switch
        {
            { IsSpoonOrCup: true } => ByParts(told.Value),
            { Dimension: Dimension.Count or Dimension.Own } => told.Value >= 3 ? Math.Round(told.Value, MidpointRounding.AwayFromZero) : Math.Max(ByHalves(told.Value), told.Value > 0 ? 0.5m : 0),
            _ => BySteps(told.Value),
        };
        return new RoundedAmount(InTablespoons(told with { Value = value }), amount.Value > 0 && Math.Abs(value - told.Value) > told.Value / 20);
    }

    /// <summary>Teaspoons that make whole or half tablespoons are told in them: 3 tsp are 1 tbsp.</summary>
    static Amount InTablespoons(Amount amount) => amount.Unit.Larger is { } larger && amount.In(larger) is { Value: >= 1 } large && large.Value * 2 == decimal.Truncate(large.Value * 2) ? large : amount;

    /// <summary>In a unit in which the number is neither long nor tiny: 1.2 kg for 1200 g.</summary>
    public static Amount Readable(Amount amount) => amount.Unit.Name switch
    {
        "g" when amount.Value >= 1000 => amount.In(Units.Kilogram),
        "kg" when amount.Value < 1 => amount.In(Units.Gram),
        "ml" when amount.Value >= 1000 => amount.In(Units.Litre),
        "l" when amount.Value < 1 => amount.In(Units.Millilitre),
        "oz" when amount.Value >= 32 => amount.In(Units.Pound),
        _ => amount,
    };

    /// <summary>The number with its part in words where the unit is measured so: "2 1/3".</summary>
    public static string Number(decimal value, Unit unit)
    {
        var whole = decimal.Truncate(value);
        if ((unit.IsSpoonOrCup || unit.Dimension is Dimension.Count or Dimension.Own) && parts.FirstOrDefault(one => Math.Abs(one.Value - (value - whole)) < 0.001m) is { Words.Length: > 0 } part)
        {
            return whole == 0 ? part.Words : $"{whole.ToString("0", CultureInfo.InvariantCulture)} {part.Words}";
        }

        return value.ToString("0.###", CultureInfo.InvariantCulture);
    }

    /// <summary>"tin", and "tins" of more than one; "tsp" and "g" are the same of many.</summary>
    public static string UnitName(Amount amount) => amount.Unit switch
    {
        { Dimension: Dimension.Own or Dimension.Volume } when amount.Value <= 1 => amount.Unit.Name,
        { Name: "leaf" or "loaf" } unit => unit.Name[..^1] + "ves",
        { Dimension: Dimension.Own, Name: [.., 's' or 'x'] } or { Name: "bunch" or "pinch" or "dash" } => amount.Unit.Name + "es",
        { Dimension: Dimension.Own } or { Name: "cup" or "pint" or "quart" or "gallon" } => amount.Unit.Name + "s",
        _ => amount.Unit.Name,
    };

    static decimal ByParts(decimal value)
    {
        var whole = decimal.Truncate(value);
        // Nobody measures an eighth beyond two.
        var nearest = parts.Where(part => value < 2 || part.Value != 0.125m).MinBy(part => Math.Abs(part.Value - (value - whole))).Value;
        var rounded = whole + nearest;
        return rounded == 0 && value > 0 ? 0.125m : rounded;
    }

    static decimal ByHalves(decimal value) => Math.Round(value * 2, MidpointRounding.AwayFromZero) / 2;

    /// <summary>To 1 or 5 of a power of ten, the largest that is no more than a fiftieth of the value: 75 and 375 stay what they are.</summary>
    static decimal BySteps(decimal value)
    {
        if (value <= 0)
        {
            return value;
        }

        var step = 0.01m;
        foreach (var next in (decimal[])[0.05m, 0.1m, 0.5m, 1, 5, 10, 50, 100])
        {
            step = next * 50 <= value ? next : step;
        }

        return Math.Round(value / step, MidpointRounding.AwayFromZero) * step;
    }
}
