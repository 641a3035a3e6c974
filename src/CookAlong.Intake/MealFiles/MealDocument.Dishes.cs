using System.Text.Json.Nodes;
using CookAlong.Domain;

namespace CookAlong.Intake.MealFiles;

public sealed partial class MealDocument
{
    /// <summary>Adds a dish of the library at the end, with ids of its own.</summary>
    /// <param name="from">Kept as "fromDish", so that the library can say where a dish is used.</param>
    public void Add(DishDocument dish, string from, CourseId course) =>
        Add(dish.InAMeal(FreeId(DishFile.Read(dish.Text).Dish!.Name), course, from));

    /// <summary>A dish of this meal for the library.</summary>
    public DishDocument Alone(DishId dish) => DishDocument.Alone(Entry("dishes", dish.Value));

    /// <summary>Each dish's "fromDish"; null for those that never were in the library.</summary>
    public IReadOnlyDictionary<DishId, string?> FromDishes =>
        Entries("dishes").ToDictionary(dish => new DishId(IdOf(dish)!), dish => DishFile.TextOf(dish["fromDish"]));
}
