using System.Collections.Immutable;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.FoodSafety;

/// <summary>
/// How long a core has to be kept at a temperature, as published. Poultry is printed by fat, from 1 to 12 %: nobody weighs it, so
/// each temperature has the longest time of all of them. "Less than 10 s" counts as 10 s.
/// </summary>
public static class KillTables
{
    static readonly Source Poultry = new("USDA FSIS", "Time-Temperature Tables for Cooking Ready-to-Eat Poultry Products", 2005, "7.0-log10 Salmonella");
    static readonly Source Beef = new("USDA FSIS", "Cooking Guideline for Meat and Poultry Products (Revised Appendix A)", 2021, "beef, corned beef and roast beef, 7.0 and 6.5-log10 Salmonella");

    /// <summary>6 log10 of Listeria, what 70 °C for 2 minutes does. Source of that count: MPI New Zealand, Technical Paper 2016/05.</summary>
    public static KillTable UnitedKingdom { get; } = new("uk-equivalents", 6,
        [(60, 2700), (65, 600), (70, 120), (75, 30), (80, 6)], Sources.UkCooking);

    public static KillTable Chicken { get; } = InFahrenheit("fsis-chicken", 7, Poultry,
        (136, 4884), (137, 3930), (138, 3174), (139, 2580), (140, 2100), (141, 1722), (142, 1410), (143, 1158), (144, 954),
        (145, 780), (146, 636), (147, 516), (148, 408), (149, 324), (150, 252), (151, 186), (152, 138), (153, 96), (154, 66),
        (155, 54.4), (156, 43), (157, 34), (158, 26.9), (159, 21.3), (160, 16.9), (161, 13.3), (162, 10.5), (163, 10), (164, 10),
        (165, 10));

    public static KillTable Turkey { get; } = InFahrenheit("fsis-turkey", 7, Poultry,
        (136, 4248), (137, 3510), (138, 2910), (139, 2424), (140, 2022), (141, 1692), (142, 1422), (143, 1188), (144, 996),
        (145, 828), (146, 690), (147, 564), (148, 462), (149, 372), (150, 294), (151, 228), (152, 168), (153, 126), (154, 96),
        (155, 78), (156, 60), (157, 50.4), (158, 40.9), (159, 33.2), (160, 26.9), (161, 21.9), (162, 17.7), (163, 14.4),
        (164, 11.7), (165, 10));

    /// <summary>Also for lamb and pork that are roasted whole. From 158 °F it is instant.</summary>
    public static KillTable WholeMeat { get; } = InFahrenheit("fsis-meat", 7, Beef,
        (130, 7260), (131, 5820), (132, 4620), (133, 3720), (134, 2820), (135, 2220), (136, 1920), (137, 1440), (138, 1140),
        (139, 900), (140, 720), (141, 600), (142, 480), (143, 360), (144, 300), (145, 240), (146, 182), (147, 144), (148, 115),
        (149, 91), (150, 72), (151, 58), (152, 46), (153, 37), (154, 29), (155, 23), (156, 19), (157, 15), (158, 0), (159, 0),
        (160, 0));

    public static KillTable WholeMeatAt65 { get; } = InFahrenheit("fsis-meat-6.5", 6.5, Beef,
        (130, 6720), (131, 5340), (132, 4260), (133, 3360), (134, 2700), (135, 2160), (136, 1680), (137, 1380), (138, 1080),
        (139, 900), (140, 720), (141, 540), (142, 480), (143, 360), (144, 300), (145, 240), (146, 169), (147, 134), (148, 107),
        (149, 85), (150, 67), (151, 54), (152, 43), (153, 34), (154, 27), (155, 22), (156, 17), (157, 14), (158, 0), (159, 0),
        (160, 0));

    public static ImmutableArray<KillTable> All { get; } = [UnitedKingdom, Chicken, Turkey, WholeMeat, WholeMeatAt65];

    /// <summary>
    /// The table a food's time is counted by. Minced meat, fish, egg dishes, stuffing have none in the United States: there the core
    /// temperature alone decides. Duck, goose and the rest take the longer of chicken and turkey (FSIS 2021); a whole bird is not
    /// asked which it is, so it takes the longer too.
    /// </summary>
    public static Published<ImmutableArray<KillTable>> Of(Region region, Food food) => region switch
    {
        Region.UnitedKingdom or Region.Scotland => new Published<ImmutableArray<KillTable>>.Is([UnitedKingdom]),
        Region.UnitedStates when food is Food.WholePoultry or Food.PoultryPieces => new Published<ImmutableArray<KillTable>>.Is([Chicken, Turkey]),
        Region.UnitedStates when food is Food.WholeCut or Food.Pork or Food.RawHam => new Published<ImmutableArray<KillTable>>.Is([WholeMeat]),
        Region.UnitedStates or Region.Canada => new Published<ImmutableArray<KillTable>>.None(region),
        _ => throw new System.Diagnostics.UnreachableException(region.ToString()),
    };

    static KillTable InFahrenheit(string id, double logs, Source source, params ReadOnlySpan<(int Fahrenheit, double Seconds)> rows)
    {
        var celsius = ImmutableArray.CreateBuilder<(double, double)>();
        foreach (var (fahrenheit, seconds) in rows)
        {
            celsius.Add((OvenScale.Celsius(fahrenheit), seconds));
        }

        return new(id, logs, celsius.ToImmutable(), source);
    }
}
