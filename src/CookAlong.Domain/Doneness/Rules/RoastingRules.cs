using System.Collections.Immutable;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Doneness.Rules;

/// <summary>
/// Published roasting times as they are printed, each with its source. They disagree: for one bird of 5 kg they run from 165 to
/// 210 minutes. They are shown side by side and never averaged, and a thermometer decides.
/// </summary>
public static class RoastingRules
{
    static readonly Source Birds = new("USDA FSIS", "Turkey roasting timetable", null, "oven 325 °F, to 165 °F");
    static readonly Source Poultry = new("USDA FSIS", "Approximate Poultry Cooking Times", null, "duck and goose");
    static readonly Source Chart = new("USDA FSIS", "foodsafety.gov, Meat and Poultry Roasting Charts", null, "current edition");
    static readonly Source Butchers = new("British Turkey Information Service", "Cooking times, as printed by butchers", null, "20 minutes a kilogram and a fixed time; 190 °C");
    static readonly Source Trade = new("Butchers' trade page", "Roasting times by the pound and by the kilogram", null, "common rule of thumb in the UK, 180 °C");
    static readonly Source Chang = new("Journal of Food Science", "Chang, Carpenter and Toledo, on whole turkeys in a conventional oven", 1998, "63(2), 262; regression on 128 birds of 5.9 to 10.8 kg");

    public static ImmutableArray<RoastingRule> All { get; } =
    [
        Hours("usda-turkey-8", Cut.WholeTurkey, false, 8, 12, 325, 165, 2.75, 3, Birds),
        Hours("usda-turkey-12", Cut.WholeTurkey, false, 12, 14, 325, 165, 3, 3.75, Birds),
        Hours("usda-turkey-14", Cut.WholeTurkey, false, 14, 18, 325, 165, 3.75, 4.25, Birds),
        Hours("usda-turkey-stuffed-8", Cut.WholeTurkey, true, 8, 12, 325, 165, 3, 3.5, Birds),
        Hours("usda-turkey-stuffed-18", Cut.WholeTurkey, true, 18, 20, 325, 165, 4.25, 4.75, Birds),
        Hours("usda-turkey-stuffed-20", Cut.WholeTurkey, true, 20, 24, 325, 165, 4.75, 5.25, Birds),
        Hours("usda-turkey-breast-4", Cut.TurkeyBreast, false, 4, 6, 325, 165, 1.5, 2.25, Birds),
        Hours("usda-turkey-breast-6", Cut.TurkeyBreast, false, 6, 8, 325, 165, 2.25, 3.25, Birds),
        Hours("usda-chicken-3", Cut.WholeChicken, null, 3, 4, 350, 165, 1.25, 1.5, Chart),
        Hours("usda-chicken-5", Cut.WholeChicken, null, 5, 7, 350, 165, 2, 2.25, Chart),
        Hours("usda-goose-8", Cut.WholeGoose, null, 8, 12, 325, 165, 2.5, 3, Poultry),
        Pounds("usda-duck-4", Cut.WholeDuck, 4, 6, 350, 165, 30, 35, Poultry),
        Pounds("usda-beef-rib", Cut.BeefRib, 4, 6, 325, 145, 28, 33, Chart),
        Pounds("usda-beef-round", Cut.BeefRound, 2.5, 4, 325, 145, 30, 35, Chart),
        Hours("usda-beef-fillet", Cut.BeefFillet, null, 4, 6, 425, 145, .75, 1, Chart),
        Pounds("usda-lamb-leg-5", Cut.LambLegOnTheBone, 5, 7, 325, 145, 20, 25, Chart),
        Pounds("usda-lamb-leg-7", Cut.LambLegOnTheBone, 7, 9, 325, 145, 10, 15, Chart),
        Pounds("usda-lamb-rolled", Cut.LambLegRolled, 4, 7, 325, 145, 25, 30, Chart),
        Pounds("usda-pork-loin", Cut.PorkLoin, 2, 5, 350, 145, 20, 20, Chart),
        Pounds("usda-pork-shoulder", Cut.PorkShoulder, 3, 6, 350, 145, 45, 45, Chart),
        Hours("usda-pork-fillet", Cut.PorkFillet, null, .5, 1.5, 425, 145, 20 / 60.0, 27 / 60.0, Chart),
        Pounds("usda-veal-rib", Cut.VealRib, 4, 5, 325, 145, 25, 27, Chart),
        Pounds("usda-veal-loin", Cut.VealLoin, 3, 4, 325, 145, 34, 36, Chart),
        Pounds("usda-ham-raw", Cut.RawHam, 5, 7, 325, 145, 22, 25, Chart),
        Pounds("usda-ham-cooked-half", Cut.CookedHam, 5, 7, 325, 140, 18, 24, Chart),
        Pounds("usda-ham-cooked-whole", Cut.CookedHam, 10, 14, 325, 140, 15, 18, Chart),
        new("uk-turkey-small", Cut.WholeTurkey, null, 2, 3.99, 190, null, new(70, 20), new(70, 20), Butchers),
        new("uk-turkey", Cut.WholeTurkey, null, 4, 11, 190, null, new(90, 20), new(90, 20), Butchers),
        new("uk-turkey-breast", Cut.TurkeyBreast, null, 1, 5, 190, null, new(20, 40), new(20, 40), Butchers),
        new("uk-turkey-older", Cut.WholeTurkey, null, 4.5, 6.5, 180, null, new(0, 40), new(0, 40), new("NHS and FSA", "Older advice on roasting a turkey", null, "40 minutes a kilogram") { FromMemory = true }),
        new("ukma-turkey", Cut.WholeTurkey, null, 4, 11, 190, null, new(0, 40), new(0, 40), new("UK Metric Association", "Metric cooking guide", null, "turkey: 40 minutes a kilogram")),
        new("chang-turkey", Cut.WholeTurkey, false, 5.9, 10.8, 162.8, 82.2, new(155, 11), new(155, 11), Chang),
        new("chang-turkey-stuffed", Cut.WholeTurkey, true, 5.9, 10.8, 162.8, 82.2, new(200, 8.8), new(200, 8.8), Chang),
        PerPound("uk-beef-rare-to-well", Cut.BeefRound, 20, 20, 30, 30),
        PerPound("uk-beef-rib-rare-to-well", Cut.BeefRib, 20, 20, 30, 30),
        PerPound("uk-lamb-leg", Cut.LambLegOnTheBone, 25, 25, 30, 30),
        PerPound("uk-lamb-rolled", Cut.LambLegRolled, 25, 25, 30, 30),
        PerPound("uk-pork-loin", Cut.PorkLoin, 30, 30, 35, 35),
        PerPound("uk-pork-shoulder", Cut.PorkShoulder, 30, 30, 35, 35),
    ];

    /// <summary>Every rule printed for such a joint, and no other; empty where none is.</summary>
    public static IEnumerable<RoastingRule> Covering(Joint joint) => All.Where(rule => rule.Covers(joint));

    /// <summary>The rules with a core temperature for the cut whose weights come nearest: what the model's size is set by.</summary>
    internal static RoastingRule Nearest(Joint joint) =>
        All.Where(rule => rule.Cut == joint.Cut && rule.CoreCelsius is not null)
            .MinBy(rule => (Outside(rule, joint.Kilograms), rule.Stuffed is { } stuffed && stuffed != joint.Stuffed))!;

    /// <summary>How far a weight lies outside a rule's, as a factor; 1 = inside.</summary>
    internal static double Outside(RoastingRule rule, double kilograms) =>
        Math.Max(1, Math.Max(rule.LeastKilograms / kilograms, kilograms / rule.MostKilograms));

    static RoastingRule Hours(string id, Cut cut, bool? stuffed, double from, double to, double oven, double core, double least, double most, Source source) =>
        new(id, cut, stuffed, from * Units.OfAPound, to * Units.OfAPound, OvenScale.Celsius(oven), OvenScale.Celsius(core), new(60 * least, 0), new(60 * most, 0), source);

    static RoastingRule Pounds(string id, Cut cut, double from, double to, double oven, double core, double least, double most, Source source) =>
        new(id, cut, null, from * Units.OfAPound, to * Units.OfAPound, OvenScale.Celsius(oven), OvenScale.Celsius(core), new(0, least / Units.OfAPound), new(0, most / Units.OfAPound), source);

    /// <summary>Minutes for each 450 g and as many more; weights are not printed, a household's joints are meant.</summary>
    static RoastingRule PerPound(string id, Cut cut, double least, double plus, double most, double plusMost) =>
        new(id, cut, null, 1, 6, 180, null, new(plus, least / .45), new(plusMost, most / .45), Trade);
}
