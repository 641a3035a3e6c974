using System.Text.Json;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Quantities;
using CookAlong.Domain.Shopping;

namespace CookAlong.Domain.Tests.Guests;

/// <summary>The tables of words, held against what the demo meals and dishes are made of.</summary>
public sealed class SeedFoodsTests
{
    static IEnumerable<(string Name, string? Unit, string[] Contains)> Ingredients => new[] { "dishes", "meals", "earlier/meals" }
        .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Root(new DirectoryInfo(AppContext.BaseDirectory)), "seed-data", folder), "*.json"))
        .SelectMany(file =>
        {
            using var json = JsonDocument.Parse(File.ReadAllText(file));
            return json.RootElement.GetProperty("dishes").EnumerateArray()
                .SelectMany(dish => dish.GetProperty("ingredients").EnumerateArray())
                .Select(one => (
                    one.GetProperty("name").GetString()!,
                    one.TryGetProperty("unit", out var unit) ? unit.GetString() : null,
                    one.TryGetProperty("contains", out var contains) ? contains.EnumerateArray().Select(word => word.GetString()!).ToArray() : []))
                .ToList();
        });

    [Fact]
    public void What_a_household_cooks_with_is_known()
    {
        Assert.True(Ingredients.Count() > 150);

        Assert.Empty(Ingredients.Select(one => one.Name).Where(name => !FoodWords.Read(name).IsKnown).Distinct());
    }

    /// <summary>What somebody wrote down by hand, the table would have found or asked about.</summary>
    [Fact]
    public void What_the_files_say_it_contains_is_found_in_the_name_too() =>
        Assert.Empty(
            from one in Ingredients
            let read = FoodWords.Read(one.Name)
            from word in one.Contains
            where !Needs.TraitsOf(word).Any(trait => read.Certain.Contains(trait) || read.Ask.Contains(trait))
            select $"{word} in {one.Name}");

    [Fact]
    public void And_has_its_aisle() =>
        Assert.Empty(Ingredients.Where(one => Aisles.Of(one.Name, Units.Of(one.Unit)) == Aisle.Other).Select(one => one.Name).Distinct());

    static string Root(DirectoryInfo from) => File.Exists(Path.Combine(from.FullName, "CookAlong.sln")) ? from.FullName : Root(from.Parent!);
}
