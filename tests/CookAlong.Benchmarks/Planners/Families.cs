using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Benchmarks.Planners;

/// <summary>
/// Invented meals of a size, always the same for a seed: roasts that rest, vegetables roasted and boiled, bakes, braises of the day before. "Full" is what a
/// household cooks for twelve (12 dishes, about 85 steps, one oven); "large" what a hall does (28 dishes, about 195, two). Each dish has
/// several things to begin with and one last step, as 15 of the 16 task graphs of recipes in CaptainCook4D have.
/// </summary>
sealed class Families
{
    static readonly CelsiusRange[] Heats = [new(150, 160, 170), new(170, 180, 190), new(175, 185, 200), new(190, 200, 210), new(210, 220, 230)];

    readonly Random random;

    Families(int seed) => random = new Random(seed);

    public static Meal Full(int seed, int helpers) => Invented.Meal(new Families(seed).Dishes(12), ovens: 1, rings: 4, helpers);

    public static Meal Large(int seed) => Invented.Meal(new Families(seed).Dishes(28), ovens: 2, rings: 8, helpers: 4);

    IEnumerable<Dish> Dishes(int count) => Enumerable.Range(0, count).Select(Dish);

    Dish Dish(int number)
    {
        var made = new Invented(number);
        void Add(int minutes, Attention attention, Uses? uses = null, int? most = null, int? baste = null) => made.Add(minutes, attention, uses, most, baste);
        Uses Ring() => Uses.Nothing with { Rings = 1 };
        Uses Inside(int shelves = 1) => Uses.Nothing with { Oven = new(null, shelves, Heats[random.Next(Heats.Length)]) };
        var wait = new Hold(HoldPlace.Table, 0, 5, 15, 25, 3, null);
        switch (number % 6)
        {
            case 0: // a roast that rests
                Add(random.Next(8, 20), Attention.HandsOn);
                Add(random.Next(60, 110), Attention.Nearby, Inside(), most: 60, baste: 30);
                Add(5, Attention.HandsOn, most: 5);
                Add(random.Next(15, 30), Attention.Unattended, most: 2);
                Add(random.Next(6, 14), Attention.HandsOn, most: 20);
                wait = new Hold(HoldPlace.Covered, 0, 8, 15, 20, 4, null);
                break;
            case 1 or 4: // vegetables peeled, cut, roasted
                Add(random.Next(6, 18), Attention.HandsOn);
                Add(random.Next(4, 10), Attention.HandsOn, most: 240);
                Add(random.Next(3, 6), Attention.HandsOn, most: 120);
                Add(random.Next(25, 50), Attention.Unattended, Inside(), most: 20);
                Add(3, Attention.HandsOn, most: 4);
                break;
            case 2: // boiled, drained, dressed
                Add(random.Next(5, 15), Attention.HandsOn);
                Add(random.Next(8, 14), Attention.Unattended, Ring(), most: 180);
                Add(random.Next(5, 20), Attention.Nearby, Ring(), most: 3);
                Add(3, Attention.HandsOn, most: 2);
                Add(random.Next(2, 6), Attention.HandsOn, most: 10);
                wait = new Hold(HoldPlace.Covered, 0, 4, 10, 15, 4, null);
                break;
            case 3: // braised ahead and warmed
                Add(random.Next(10, 20), Attention.HandsOn);
                Add(random.Next(60, 120), Attention.Nearby, Ring(), most: 60, baste: 40);
                Add(60, Attention.Unattended, most: 30);
                Add(random.Next(12, 20), Attention.Nearby, Ring(), most: 1380);
                Add(4, Attention.HandsOn, most: 10);
                wait = new Hold(HoldPlace.Covered, 0, 20, 40, 60, 1, null);
                break;
            default: // mixed, baked or grilled, sauced
                Add(random.Next(5, 12), Attention.HandsOn);
                Add(random.Next(4, 10), Attention.HandsOn, Uses.Nothing with { Appliances = [new("mixer")] }, most: 120);
                Add(random.Next(10, 25), Attention.Unattended, most: 30);
                Add(random.Next(5, 10), Attention.HandsOn, most: 60);
                Add(random.Next(20, 40), Attention.Unattended, Inside(), most: 90);
                Add(random.Next(3, 8), Attention.HandsOn, most: 15);
                Add(random.Next(3, 6), Attention.HandsOn, Ring(), most: 20);
                wait = new Hold(HoldPlace.Side, 0, 10, 20, 35, 2, null);
                break;
        }

        return made.Dish(wait, random);
    }
}
