using System.Text.Json.Nodes;

namespace CookAlong.Web.Features.Dishes;

/// <summary>The dishes that come with CookAlong: a file for each feast, in "seed-data/dishes" beside the program.</summary>
public sealed class DemoDishes(DishBook book)
{
    public static string Folder => Path.Combine(AppContext.BaseDirectory, "seed-data", "dishes");

    /// <summary>Adds those whose names the library has not.</summary>
    /// <returns>Names of the dishes added.</returns>
    public async Task<IReadOnlyList<string>> AddAsync(CancellationToken stop)
    {
        var here = (await book.AllAsync(stop)).Where(dish => dish.Row.DeletedAt is null).Select(dish => dish.Dish.Name).ToHashSet(StringComparer.Ordinal);
        List<string> documents = [];
        foreach (var file in Directory.Exists(Folder) ? Directory.EnumerateFiles(Folder, "*.json").Order(StringComparer.Ordinal) : Enumerable.Empty<string>())
        {
            documents.AddRange(Documents(await File.ReadAllTextAsync(file, stop)).Where(dish => !here.Contains(dish["name"]!.GetValue<string>())).Select(dish => dish.ToJsonString()));
        }

        return await book.AddAllAsync(documents, stop);
    }

    /// <summary>A feast's dishes, each with the household and the occasion that the file says once.</summary>
    static IEnumerable<JsonObject> Documents(string feast)
    {
        var file = JsonNode.Parse(feast)!.AsObject();
        foreach (var dish in file["dishes"]!.AsArray().Select(one => one!.DeepClone().AsObject()))
        {
            (dish["household"], dish["occasion"]) = (file["household"]!.DeepClone(), file["occasion"]!.DeepClone());
            yield return dish;
        }
    }
}
