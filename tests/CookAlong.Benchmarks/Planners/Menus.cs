using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Benchmarks.Planners;

/// <summary>
/// Full meals (12 dishes, about 85 steps, one oven) of the kinds of dishes that published menus have: even seeds as the menu for a
/// Thanksgiving dinner, odd ones as that for a Christmas dinner, both in F. M. Farmer, The Boston Cooking-School Cook Book, 1896,
/// page 600. How each is cooked follows the book's own recipes: three or four dishes of twelve need the oven near the table, others
/// were baked before. Minutes are invented, always the same for a seed.
/// </summary>
sealed class Menus
{
    static readonly CelsiusRange Slow = new(150, 160, 170), Moderate = new(170, 180, 190), Hot = new(190, 200, 210), VeryHot = new(210, 220, 230);

    // Oyster soup, celery and salted almonds, roast fowl, cranberry jelly, mashed potatoes, onions in cream, squash, chicken pie,
    // fruit pudding, three pies, ice cream, fancy cakes.
    static readonly Kind[] First = [Kind.Soup, Kind.Cold, Kind.Roast, Kind.Preserve, Kind.Boiled, Kind.Boiled, Kind.Boiled, Kind.Pie, Kind.Steamed, Kind.BakedBefore, Kind.Frozen, Kind.BakedBefore];

    // Consommé, bread sticks, olives and celery, roast goose, apple sauce, duchess potatoes, lima beans, croquettes, lettuce with
    // cheese straws, plum pudding, frozen pudding, cake.
    static readonly Kind[] Second = [Kind.Soup, Kind.BakedBefore, Kind.Cold, Kind.Roast, Kind.Preserve, Kind.Browned, Kind.Boiled, Kind.Fried, Kind.Straws, Kind.Steamed, Kind.Frozen, Kind.BakedBefore];

    static readonly Hold Cold = new(HoldPlace.Side, 0, 1_200, 1_380, 1_440, 1, null);

    readonly Random random;

    Menus(int seed) => random = new Random(seed);

    enum Kind
    {
        Soup, Cold, Roast, Preserve, Boiled, Browned, Pie, Fried, Straws, Steamed, BakedBefore, Frozen,
    }

    public static Meal Of(int seed, int helpers)
    {
        var menu = new Menus(seed);
        return Invented.Meal((seed % 2 == 0 ? First : Second).Select(menu.Dish), ovens: 1, rings: 4, helpers);
    }

    Dish Dish(Kind kind, int number)
    {
        var made = new Invented(number);
        void Add(int least, int most, Attention attention, Uses? uses = null, int? gap = null, int? every = null) => made.Add(random.Next(least, most), attention, uses, gap, every);
        void Hands(int least, int most, int? gap = null) => Add(least, most, Attention.HandsOn, gap: gap);
        void OnRing(int least, int most, Attention attention = Attention.Nearby, int? gap = null, int? every = null) => Add(least, most, attention, Uses.Nothing with { Rings = 1 }, gap, every);
        void Bake(int least, int most, CelsiusRange heat, int shelves = 1, int? gap = null, int? every = null) => Add(least, most, Attention.Nearby, Uses.Nothing with { Oven = new(null, shelves, heat) }, gap, every);

        var hold = Cold;
        switch (kind)
        {
            case Kind.Soup:
                Hands(10, 20);
                OnRing(60, 120, gap: 60, every: 40);
                Add(60, 61, Attention.Unattended, gap: 30);
                OnRing(12, 20, gap: 1_380);
                Hands(3, 6, gap: 10);
                hold = new(HoldPlace.Covered, 0, 20, 40, 60, 1, null);
                break;
            case Kind.Cold:
                Hands(8, 18);
                Hands(4, 8, gap: 1_200);
                break;
            case Kind.Roast:
                Hands(12, 25);
                Bake(100, 150, Moderate, shelves: 2, gap: 60, every: 30);
                Hands(4, 6, gap: 5);
                Add(15, 30, Attention.Unattended, gap: 2);
                Hands(6, 14, gap: 20);
                hold = new(HoldPlace.Covered, 0, 8, 15, 20, 4, null);
                break;
            case Kind.Preserve:
                Hands(6, 15);
                OnRing(15, 25, gap: 120);
                Add(60, 61, Attention.Unattended, gap: 30);
                Hands(2, 4, gap: 1_380);
                break;
            case Kind.Boiled:
                Hands(5, 15);
                OnRing(8, 14, Attention.Unattended, gap: 180);
                OnRing(10, 30, gap: 3);
                Hands(3, 5, gap: 2);
                Hands(2, 6, gap: 10);
                hold = new(HoldPlace.Covered, 0, 4, 10, 15, 4, null);
                break;
            case Kind.Browned:
                Hands(8, 18);
                OnRing(20, 30, gap: 180);
                Hands(6, 12, gap: 3);
                Bake(10, 16, VeryHot, gap: 120);
                Hands(2, 4, gap: 4);
                hold = new(HoldPlace.Table, 0, 5, 15, 25, 3, null);
                break;
            case Kind.Pie:
                Hands(8, 15);
                Hands(8, 15, gap: 600);
                Hands(5, 10, gap: 240);
                Bake(35, 55, Hot, gap: 60);
                Hands(2, 5, gap: 10);
                hold = new(HoldPlace.Side, 0, 10, 20, 35, 2, null);
                break;
            case Kind.Fried:
                Hands(10, 18);
                Add(60, 90, Attention.Unattended, gap: 20);
                Hands(8, 14, gap: 600);
                Add(8, 14, Attention.HandsOn, Uses.Nothing with { Rings = 1 }, gap: 60);
                Hands(2, 3, gap: 2);
                hold = new(HoldPlace.Covered, 0, 4, 10, 15, 4, null);
                break;
            case Kind.Straws:
                Hands(8, 14);
                Bake(10, 14, Hot, gap: 60);
                Hands(6, 12, gap: 1_200);
                Hands(3, 5, gap: 60);
                hold = new(HoldPlace.Table, 0, 10, 20, 30, 2, null);
                break;
            case Kind.Steamed:
                Hands(15, 25);
                OnRing(120, 180, gap: 240);
                Hands(3, 5, gap: 60);
                Add(6, 10, Attention.HandsOn, Uses.Nothing with { Rings = 1 }, gap: 10);
                hold = new(HoldPlace.Covered, 0, 10, 20, 40, 2, null);
                break;
            case Kind.BakedBefore:
                Add(8, 16, Attention.HandsOn, Uses.Nothing with { Appliances = [new("mixer")] });
                Add(10, 25, Attention.Unattended, gap: 30);
                Hands(5, 10, gap: 60);
                Bake(20, 45, random.Next(2) == 0 ? Slow : Moderate, gap: 60);
                Hands(3, 6, gap: 1_380);
                break;
            case Kind.Frozen:
                Hands(5, 10);
                Add(10, 15, Attention.HandsOn, Uses.Nothing with { Rings = 1 }, gap: 30);
                Add(180, 240, Attention.Unattended, gap: 120);
                Hands(3, 5, gap: 1_080);
                hold = new(HoldPlace.Table, 0, 4, 8, 12, 3, null);
                break;
            default:
                throw new System.Diagnostics.UnreachableException($"no dish of kind {kind}");
        }

        return made.Dish(hold, random);
    }
}
