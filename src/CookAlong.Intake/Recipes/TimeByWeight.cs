using CookAlong.Domain.Guests;
using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>A time that a recipe gives by the pound or the kilogram, counted out: "20 minutes to the pound plus 20 minutes".</summary>
/// <param name="Rate">As said.</param>
/// <param name="Food">Whose weight counted; null where no main food's weight is written, then the weight is a guess.</param>
/// <param name="Least">Kilograms.</param>
/// <param name="Most">Kilograms, at least <paramref name="Least"/>.</param>
public sealed record TimeByWeight(TimeRead Rate, string? Food, double Least, double Most)
{
    /// <summary>Kilograms of a joint that nobody weighed; own estimate.</summary>
    const double Assumed = 1.5;

    double Unit => Rate.Role == TimeRole.PerPound ? Units.OfAPound : 1;

    public double LeastMinutes => Rate.Least * Least / Unit;

    public double MostMinutes => Rate.Most * Most / Unit;

    /// <summary>Null when the step has no time by weight. The heaviest main food that it names, else the heaviest of all. Of two rates the second says the first again in another unit.</summary>
    internal static TimeByWeight? Of(StepRead step, IReadOnlyList<MainFood> foods) =>
        step.Times.FirstOrDefault(time => time.Role is TimeRole.PerPound or TimeRole.PerKilo) is not { } rate ? null
        : Heaviest(foods, FoodNames.Words(step.Text)) is { } food ? new(rate, food.Name, food.Least, food.Most)
        : new(rate, null, Assumed, Assumed);

    static MainFood? Heaviest(IReadOnlyList<MainFood> foods, IReadOnlyCollection<string> words) =>
        foods.Where(food => food.IsNamedIn(words)).MaxBy(food => food.Most) ?? foods.MaxBy(food => food.Most);
}

/// <summary>An ingredient that fills a plate, and its weight in kilograms.</summary>
sealed record MainFood(string Name, double Least, double Most)
{
    /// <summary>Kilograms; heavier is no joint that a time by weight is meant for.</summary>
    const double Heaviest = 50;

    public static IReadOnlyList<MainFood> All(IEnumerable<IngredientRead> ingredients, SpoonSizes spoons) =>
    [
        .. from ingredient in ingredients
           where ingredient is { Least: not null, Most: not null } && FoodWords.Read(ingredient.Name).IsMain
           let least = Kilograms(ingredient.Least!.Value, ingredient, spoons)
           let most = Kilograms(ingredient.Most!.Value, ingredient, spoons)
           where least > 0 && most <= Heaviest
           select new MainFood(ingredient.Name, least.Value, most.Value),
    ];

    /// <summary>By the word that makes it a main food: "beef" of "rolled joint of beef".</summary>
    public bool IsNamedIn(IReadOnlyCollection<string> words) => FoodNames.Words(Name).Any(word => words.Contains(word) && FoodWords.Read(word).IsMain);

    static double? Kilograms(decimal quantity, IngredientRead ingredient, SpoonSizes spoons) =>
        Weighing.Grams(new Amount(quantity, Units.Of(ingredient.Unit, spoons)), ingredient.Name) is { } grams ? (double)grams / 1000 : null;
}
