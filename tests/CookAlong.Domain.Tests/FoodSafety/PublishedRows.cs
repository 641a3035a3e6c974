using CookAlong.Domain.FoodSafety;

namespace CookAlong.Domain.Tests.FoodSafety;

/// <summary>Rows as they are printed, one for each limit at the least; the source stands with the limit.</summary>
static class PublishedRows
{
    /// <summary>The limit's id, °C to a tenth, seconds (0 = none printed).</summary>
    public static readonly (string Id, double Celsius, double Seconds)[] Temperatures =
    [
        // USDA FSIS chart: 165, 160 and 145 °F; a rest of 3 minutes belongs to the 145 of whole cuts and raw ham.
        ("us-poultry", 73.9, 0), ("us-stuffing", 73.9, 0), ("us-casserole", 73.9, 0), ("us-ground", 71.1, 0), ("us-egg-dish", 71.1, 0),
        ("us-whole-cut", 62.8, 180), ("us-raw-ham", 62.8, 180), ("us-fish", 62.8, 0),
        // UK FSA: 70 °C for 2 minutes.
        ("uk-70-for-2", 70, 120),
        // Health Canada 2012.
        ("ca-beef-medium-rare", 63, 0), ("ca-pork", 71, 0), ("ca-ground", 71, 0), ("ca-poultry-pieces", 74, 0), ("ca-whole-poultry", 85, 0),
        ("ca-egg-dish", 74, 0), ("ca-fish", 70, 0),
        // UK law 63 °C; USDA 140 °F; reheating UK as cooking, Scotland 82 °C, USDA 165 °F; fridges 8 °C (UK law) and 40 °F.
        ("uk-hot", 63, 0), ("us-hot", 60, 0), ("uk-reheat", 70, 120), ("scots-reheat", 82, 0), ("us-reheat", 73.9, 0), ("uk-fridge", 8, 0), ("us-fridge", 4.4, 0),
    ];

    /// <summary>The limit's id, hours.</summary>
    public static readonly (string Id, double Least, double Most)[] Times =
    [
        ("uk-below-hot", 0, 2), ("us-out", 0, 2), ("us-out-hot", 0, 1), ("uk-cool", 1, 2), ("us-cool", 0, 2),
        ("uk-cool-rice", 0, 1), // from memory
        ("uk-keep", 0, 48), ("uk-keep-rice", 0, 24), ("us-keep-meat", 72, 96), ("us-keep-rice", 96, 144), ("us-keep-pasta", 72, 120),
        ("us-keep-soup", 72, 96), ("us-keep-stuffing", 24, 48), ("us-keep-gravy", 24, 48), ("us-keep-ham", 72, 96), ("us-keep-egg", 72, 96),
        ("us-keep-salad", 72, 96), ("us-keep-vegetables", 72, 96),
        // Frozen, in months of 30 days. UK FSA, Food Safety Week 2012: within 3. USDA FoodKeeper: leftovers with meat, fish, poultry or egg 2 to 3,
        // without 1 to 2, cooked rice 6, cooked pasta 1 to 2, quiche 2 to 3. Cold Food Storage Chart: soups and stews 2 to 3, fresh ham,
        // cooked, 3 to 4, salads "does not freeze well". foodsafety.gov as reprinted by a grocer: stuffing and gravy 1.
        ("uk-freeze", 0, 3 * Month), ("us-freeze-meat", 2 * Month, 3 * Month), ("us-freeze-vegetables", Month, 2 * Month), ("us-freeze-rice", 6 * Month, 6 * Month),
        ("us-freeze-pasta", Month, 2 * Month), ("us-freeze-egg", 2 * Month, 3 * Month), ("us-freeze-soup", 2 * Month, 3 * Month), ("us-freeze-ham", 3 * Month, 4 * Month),
        ("us-freeze-salad", 0, 0), ("us-freeze-stuffing", Month, Month), ("us-freeze-gravy", Month, Month),
    ];

    /// <summary>The rule's id, kilograms, hours.</summary>
    public static readonly (string Id, double Kilograms, double Least, double Most)[] Thawing =
    [
        ("us-thaw-fridge-4", 5 * Pound, 24, 36), ("us-thaw-fridge-6", 7 * Pound, 36, 48), ("us-thaw-fridge-8", 10 * Pound, 48, 72),
        ("us-thaw-fridge-12", 13 * Pound, 72, 84), ("us-thaw-fridge-14", 16 * Pound, 84, 108), ("us-thaw-fridge-18", 19 * Pound, 108, 120),
        ("us-thaw-water-8", 10 * Pound, 4, 6), ("us-thaw-water-20", 22 * Pound, 10, 12),
        // 24 hours for each 4 to 5 lb; half an hour a pound in cold water.
        ("us-thaw-fridge", 20 * Pound, 96, 120), ("us-thaw-water", 12 * Pound, 6, 6),
        ("uk-thaw-fridge", 5, 50, 60), ("uk-thaw-cool", 5, 15, 20),
    ];

    /// <summary>The table's id, °F (UK: °C), seconds.</summary>
    public static readonly (string Id, double Degrees, double Seconds)[] Kill =
    [
        ("uk-equivalents", 60, 2700), ("uk-equivalents", 65, 600), ("uk-equivalents", 70, 120), ("uk-equivalents", 75, 30), ("uk-equivalents", 80, 6),
        // The longest of all fat contents: 12 % fat.
        ("fsis-chicken", 140, 2100), ("fsis-chicken", 150, 252), ("fsis-chicken", 160, 16.9),
        ("fsis-turkey", 140, 2022), ("fsis-turkey", 150, 294), ("fsis-turkey", 160, 26.9), ("fsis-turkey", 165, 10),
        ("fsis-meat", 133, 3720), ("fsis-meat", 140, 720), ("fsis-meat", 145, 240), ("fsis-meat", 150, 72), ("fsis-meat", 157, 15), ("fsis-meat", 158, 0),
        ("fsis-meat-6.5", 133, 3360), ("fsis-meat-6.5", 150, 67),
    ];

    const double Pound = .45359237;

    const double Month = 30 * 24;

    public static IEnumerable<Limit> AllTemperatures => CoreLimits.All.Select(one => one.Limit).Concat(Holding.AllTemperatures);

    public static IEnumerable<TimeLimit> AllTimes => Holding.AllTimes.Concat(Leftovers.All).Concat(Freezing.All);
}
