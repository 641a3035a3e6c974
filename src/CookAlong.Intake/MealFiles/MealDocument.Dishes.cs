using System.Text.Json.Nodes;
using CookAlong.Domain;

namespace CookAlong.Intake.MealFiles;

public sealed partial class MealDocument
{
    /// <summary>
    /// Adds a dish of the library at the end, with ids of its own. Appliances that it cannot do without come into the
    /// kitchen; other ways of a step that need one the kitchen has not are left out.
    /// </summary>
    /// <param name="from">Kept as "fromDish", so that the library can say where a dish is used.</param>
    public void Add(DishDocument dish, string from, CourseId course)
    {
        var json = dish.InAMeal(FreeId(DishFile.Read(dish.Text).Dish!.Name), course, from);
        var known = Entries(Kitchen, "appliances").Select(IdOf).ToHashSet();
        foreach (var step in Entries(json, "steps"))
        {
            foreach (var lacking in Appliances(step).Where(known.Add).ToList())
            {
                if (Kitchen["appliances"] is not JsonArray appliances)
                {
                    Kitchen["appliances"] = appliances = [];
                }

                appliances.Add(new JsonObject { ["id"] = lacking, ["count"] = 1 });
            }
        }

        foreach (var step in Entries(json, "steps"))
        {
            foreach (var option in Entries(step, "options").Where(option => !Appliances(option).All(known.Contains)).ToList())
            {
                step["options"]!.AsArray().Remove(option);
            }
        }

        Add(json);
    }

    private static IEnumerable<string> Appliances(JsonObject way) => Entries(way, "uses").Select(use => DishFile.TextOf(use["appliance"])).OfType<string>();

    /// <summary>A dish of this meal for the library.</summary>
    public DishDocument Alone(DishId dish) => DishDocument.Alone(Entry("dishes", dish.Value));

    /// <summary>Each dish's "fromDish"; null for those that never were in the library.</summary>
    public IReadOnlyDictionary<DishId, string?> FromDishes =>
        Entries("dishes").ToDictionary(dish => new DishId(IdOf(dish)!), dish => DishFile.TextOf(dish["fromDish"]));
}
