using System.Collections.Frozen;

namespace CookAlong.Domain.Quantities;

/// <summary>
/// The units of kitchens. Sizes are exact: NIST SP 811 (2008), appendix B, and NIST Handbook 44, appendix C, for pounds,
/// gallons and their parts; spoons and cups outside the USA are whole millilitres by definition.
/// </summary>
public static class Units
{
    public static readonly Unit Gram = new("g", Dimension.Mass, 1);
    public static readonly Unit Kilogram = new("kg", Dimension.Mass, 1000);
    public static readonly Unit Milligram = new("mg", Dimension.Mass, 0.001m);
    public static readonly Unit Ounce = new("oz", Dimension.Mass, 28.349523125m);
    public static readonly Unit Pound = new("lb", Dimension.Mass, 453.59237m);

    /// <summary>Kilograms.</summary>
    public static double OfAPound { get; } = (double)Pound.Size / 1000;

    public static readonly Unit Millilitre = new("ml", Dimension.Volume, 1);
    public static readonly Unit Centilitre = new("cl", Dimension.Volume, 10);
    public static readonly Unit Decilitre = new("dl", Dimension.Volume, 100);
    public static readonly Unit Litre = new("l", Dimension.Volume, 1000);

    public static readonly Unit Piece = new("", Dimension.Count, 1);
    public static readonly Unit Dozen = new("dozen", Dimension.Count, 12);

    public static readonly Unit Millimetre = new("mm", Dimension.Length, 1);
    public static readonly Unit Centimetre = new("cm", Dimension.Length, 10);
    public static readonly Unit Metre = new("m", Dimension.Length, 1000);
    public static readonly Unit Inch = new("in", Dimension.Length, 25.4m);

    static readonly FrozenDictionary<string, Unit> everywhere = Named(
        (Gram, ["g", "gr", "gram", "grams", "gramme", "grammes"]),
        (Kilogram, ["kg", "kilo", "kilos", "kilogram", "kilograms"]),
        (Milligram, ["mg"]),
        (Ounce, ["oz", "ounce", "ounces"]),
        (Pound, ["lb", "lbs", "pound", "pounds"]),
        (Millilitre, ["ml", "millilitre", "millilitres", "milliliter", "milliliters"]),
        (Centilitre, ["cl", "centilitre", "centilitres"]),
        (Decilitre, ["dl", "decilitre", "decilitres"]),
        (Litre, ["l", "litre", "litres", "liter", "liters", "ltr"]),
        (Dozen, ["dozen", "doz"]),
        (Millimetre, ["mm"]),
        (Centimetre, ["cm", "centimetre", "centimetres"]),
        (Metre, ["m", "metre", "metres"]),
        (Inch, ["in", "inch", "inches"]));

    static readonly FrozenDictionary<string, Unit> metric = Measures(teaspoon: 5, dessertspoon: 10, tablespoon: 15, fluidOunce: 28.4130625m, cup: 250, pint: 568.26125m);
    static readonly FrozenDictionary<string, Unit> australian = Measures(teaspoon: 5, dessertspoon: 10, tablespoon: 20, fluidOunce: 28.4130625m, cup: 250, pint: 568.26125m);
    static readonly FrozenDictionary<string, Unit> american = Measures(4.92892159375m, 9.8578431875m, 14.78676478125m, 29.5735295625m, 236.5882365m, 473.176473m);

    /// <summary>Containers and natural parts; one is never told in another.</summary>
    static readonly FrozenDictionary<string, Unit> own = Named([.. new[]
    {
        "tin", "can", "jar", "bottle", "packet", "pack", "sachet", "bag", "box", "carton", "tub", "tube", "block", "bunch", "sprig", "stalk", "stick", "clove",
        "head", "bulb", "leaf", "slice", "rasher", "fillet", "handful", "knob", "drop", "strip", "sheet", "cube", "piece", "ear", "rib", "root", "loaf", "set", "glass",
    }.Select(name => (new Unit(name, Dimension.Own, 1), Spellings(name)))]);

    /// <summary>The unit of a word, as a kitchen with such spoons means it; null when the word is none. Case counts in "T" and "t" alone.</summary>
    public static Unit? Find(string word, SpoonSizes spoons = SpoonSizes.Metric)
    {
        var key = word is "T" ? "tbsp" : word.TrimEnd('.').ToLowerInvariant();
        var measures = spoons switch
        {
            SpoonSizes.Metric or SpoonSizes.UnitedKingdom => metric,
            SpoonSizes.Australia => australian,
            SpoonSizes.UnitedStates => american,
            _ => throw new ArgumentOutOfRangeException(nameof(spoons)),
        };
        return everywhere.GetValueOrDefault(key) ?? measures.GetValueOrDefault(key) ?? own.GetValueOrDefault(key);
    }

    /// <summary>What a file's ingredient says, with a unit that nobody knows as one of its own; none = pieces.</summary>
    public static Unit Of(string? word, SpoonSizes spoons = SpoonSizes.Metric) =>
        string.IsNullOrWhiteSpace(word) ? Piece : Find(word.Trim(), spoons) ?? new Unit(word.Trim().ToLowerInvariant(), Dimension.Own, 1);

    static FrozenDictionary<string, Unit> Measures(decimal teaspoon, decimal dessertspoon, decimal tablespoon, decimal fluidOunce, decimal cup, decimal pint)
    {
        Unit Spoon(string name, decimal size) => new(name, Dimension.Volume, size) { IsSpoonOrCup = true };
        return Named(
            (Spoon("tsp", teaspoon) with { Larger = Spoon("tbsp", tablespoon) }, ["tsp", "tsps", "teaspoon", "teaspoons", "teaspoonful", "teaspoonfuls", "t"]),
            (Spoon("dsp", dessertspoon), ["dsp", "dessertspoon", "dessertspoons", "dessertspoonful"]),
            (Spoon("tbsp", tablespoon), ["tbsp", "tbsps", "tbs", "tbl", "tablespoon", "tablespoons", "tablespoonful", "tablespoonfuls"]),
            (Spoon("cup", cup), ["cup", "cups", "cupful", "cupfuls"]),
            // A pinch is a sixteenth of a teaspoon and a dash an eighth: common practice, no source.
            (Spoon("pinch", teaspoon / 16), ["pinch", "pinches"]),
            (Spoon("dash", teaspoon / 8), ["dash", "dashes"]),
            (new("fl oz", Dimension.Volume, fluidOunce), ["floz", "fl oz", "fluid ounce", "fluid ounces"]),
            (Spoon("pint", pint), ["pint", "pints", "pt"]),
            (Spoon("quart", pint * 2), ["quart", "quarts", "qt"]),
            (Spoon("gallon", pint * 8), ["gallon", "gallons", "gal"]));
    }

    static FrozenDictionary<string, Unit> Named(params (Unit Unit, string[] Words)[] units) =>
        units.SelectMany(unit => unit.Words.Select(word => (word, unit.Unit))).ToFrozenDictionary(one => one.word, one => one.Unit, StringComparer.Ordinal);

    static string[] Spellings(string name) => name switch
    {
        "leaf" => ["leaf", "leaves"],
        "loaf" => ["loaf", "loaves"],
        "bunch" or "box" or "glass" => [name, name + "es"],
        _ => [name, name + "s"],
    };
}
