using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Shopping;

namespace CookAlong.Web.Features.Shopping;

/// <summary>Taps on a shopping list, as screens send them and as they are kept. Their names never change.</summary>
public static class ShoppingTapJson
{
    /// <summary>What a household sets for all its lists, as <see cref="SettingOf"/> names it.</summary>
    public static readonly string[] Settings = ["aisles", "currency"];

    /// <summary>Which setting of the household a tap makes; null = it is about one list.</summary>
    public static string? SettingOf(ShoppingTap tap) => tap switch
    {
        ShoppingTap.ArrangeAisles => "aisles",
        ShoppingTap.SetCurrency => "currency",
        ShoppingTap.MarkLine or ShoppingTap.AddExtra or ShoppingTap.RemoveExtra or ShoppingTap.SetPortions or ShoppingTap.SetPrice => null,
        _ => throw new System.Diagnostics.UnreachableException($"An unknown tap: {tap.GetType().Name}."),
    };

    public static string Portions(DishId dish, decimal portions) => Write(new ShoppingTap.SetPortions(dish, portions));

    public static string Remove(string key) => Write(new ShoppingTap.RemoveExtra(key));

    public static string Write(ShoppingTap tap) => (tap switch
    {
        ShoppingTap.MarkLine mark => new JsonObject { ["kind"] = "mark", ["line"] = mark.Line, ["as"] = Name(mark.Mark), ["amount"] = mark.Amount },
        ShoppingTap.AddExtra add => new JsonObject { ["kind"] = "add", ["line"] = add.Key, ["text"] = add.Text },
        ShoppingTap.RemoveExtra remove => new JsonObject { ["kind"] = "remove", ["line"] = remove.Key },
        ShoppingTap.SetPortions portions => new JsonObject { ["kind"] = "portions", ["dish"] = portions.Dish.Value, ["portions"] = portions.Portions },
        ShoppingTap.ArrangeAisles aisles => new JsonObject { ["kind"] = "aisles", ["order"] = new JsonArray([.. aisles.Order.Select(aisle => JsonValue.Create(Name(aisle)))]) },
        ShoppingTap.SetPrice price => new JsonObject { ["kind"] = "price", ["line"] = price.Line, ["price"] = price.Price },
        ShoppingTap.SetCurrency currency => new JsonObject { ["kind"] = "currency", ["code"] = currency.Code },
        _ => throw new System.Diagnostics.UnreachableException($"An unknown tap: {tap.GetType().Name}."),
    }).ToJsonString();

    /// <summary>Null when it is none. Whether it is sound is asked when it comes: what was kept is read for ever, whatever the bounds are by then.</summary>
    public static ShoppingTap? Read(JsonElement json)
    {
        if (json.ValueKind != JsonValueKind.Object)
        {
            return null;
        }

        return Text(json, "kind") switch
        {
            "mark" when Text(json, "line") is { } line && Named<Mark>(Text(json, "as")) is { } mark => new ShoppingTap.MarkLine(line, mark, Text(json, "amount") ?? ""),
            "add" when Text(json, "line") is { } key && Text(json, "text") is { } text => new ShoppingTap.AddExtra(key, text),
            "remove" when Text(json, "line") is { } key => new ShoppingTap.RemoveExtra(key),
            "portions" when Text(json, "dish") is { } dish && Number(json, "portions") is { } portions => new ShoppingTap.SetPortions(new DishId(dish), portions),
            "aisles" when Order(json) is { } order => new ShoppingTap.ArrangeAisles(order),
            "price" when Text(json, "line") is { } line && Number(json, "price") is { } price => new ShoppingTap.SetPrice(line, price),
            "price" when Text(json, "line") is { } line && json.TryGetProperty("price", out var none) && none.ValueKind == JsonValueKind.Null => new ShoppingTap.SetPrice(line, null),
            "currency" when Text(json, "code") is { } code => new ShoppingTap.SetCurrency(code),
            _ => null,
        };
    }

    public static string Name<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    static T? Named<T>(string? name)
        where T : struct, Enum => Enum.GetValues<T>().Where(value => Name(value) == name).Cast<T?>().FirstOrDefault();

    static ImmutableArray<Aisle>? Order(JsonElement json)
    {
        if (!json.TryGetProperty("order", out var order) || order.ValueKind != JsonValueKind.Array)
        {
            return null;
        }

        var aisles = order.EnumerateArray().Select(one => one.ValueKind == JsonValueKind.String ? Named<Aisle>(one.GetString()) : null).ToList();
        return aisles.Contains(null) ? null : [.. aisles.OfType<Aisle>()];
    }

    static string? Text(JsonElement json, string name) => json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    static decimal? Number(JsonElement json, string name) => json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number && value.TryGetDecimal(out var number) ? number : null;
}
