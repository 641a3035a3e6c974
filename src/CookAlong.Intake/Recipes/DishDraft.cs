using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>A dish of a recipe, to be corrected by a person and then added to a meal file.</summary>
public sealed class DishDraft
{
    /// <summary>°C of an oven that a recipe does not name: a moderate one; common practice, no source.</summary>
    const int ModerateOven = 180;

    public required string Name { get; set; }

    public int Serves { get; set; }

    public required List<IngredientDraft> Ingredients { get; init; }

    public required List<StepDraft> Steps { get; init; }

    /// <summary>What the recipe says of the whole.</summary>
    public required StatedTimes Stated { get; init; }

    /// <summary>Of its times, as they stand now.</summary>
    public IEnumerable<TimeDoubt> Doubts => TimeDoubt.Of(Stated, Steps);

    /// <param name="guests">Whom it is for where it does not say.</param>
    /// <param name="spoons">The household's.</param>
    public static DishDraft Of(RecipeRead recipe, int guests, SpoonSizes spoons)
    {
        List<IngredientRead> ingredients = [.. recipe.Ingredients.Select(line => IngredientRead.Of(line, spoons))];
        var foods = MainFood.All(ingredients, spoons);
        List<StepDraft> steps = [.. recipe.Steps.Select(step => StepDraft.Of(step, foods))];
        Guesses.Better(steps, recipe.Stated);
        Overlaps.Mark(steps);
        return new DishDraft
        {
            Name = recipe.Name.Length > 0 ? recipe.Name : "A dish without a name",
            Serves = recipe.Serves ?? guests,
            Ingredients = [.. ingredients.Select(IngredientDraft.Of)],
            Steps = steps,
            Stated = recipe.Stated,
        };
    }

    /// <summary>The appliance of a kitchen that is called so; null where there is none.</summary>
    public static ApplianceId? FridgeOf(Kitchen kitchen) =>
        kitchen.Appliances.Select(one => (ApplianceId?)one.Id).FirstOrDefault(id => string.Equals(id!.Value.Value, "fridge", StringComparison.OrdinalIgnoreCase));

    /// <summary>As a dish of a meal file (cookalong-meal/1).</summary>
    /// <param name="id">Free in the meal, for the dish and, with a number behind it, for its steps.</param>
    /// <param name="fridge">What the kitchen counts places in its fridge by (<see cref="FridgeOf"/>); null when it counts none.</param>
    public JsonObject ToJson(string id, string course, ApplianceId? fridge) => new()
    {
        ["id"] = id,
        ["name"] = Name.Trim(),
        ["course"] = course,
        ["serves"] = Serves,
        ["ingredients"] = new JsonArray([.. Ingredients.Select(Json)]),
        ["holds"] = new JsonArray(new JsonObject { ["place"] = "covered", ["bestWithin"] = 10, ["goodFor"] = 20, ["limit"] = 30 }),
        ["steps"] = StepsJson(id, fridge),
    };

    /// <summary>In a file steps follow each other unless one says what it waits for, so it is said only where that is something else.</summary>
    JsonArray StepsJson(string id, ApplianceId? fridge)
    {
        var waits = Overlaps.WaitsFor(Steps);
        return [.. Steps.Select((step, i) =>
        {
            var json = Json(step, $"{id}-{i + 1}", fridge);
            if (!waits[i].SequenceEqual(i == 0 ? [] : [i - 1]))
            {
                json["after"] = new JsonArray([.. waits[i].Select(other => new JsonObject { ["step"] = $"{id}-{other + 1}" })]);
            }

            return json;
        })];
    }

    /// <summary>With the line as it was written.</summary>
    static JsonObject Json(IngredientDraft draft)
    {
        var (ingredient, json) = (draft.Read, new JsonObject { ["name"] = draft.Name.Trim() });
        if (draft.Quantity is { } quantity)
        {
            json["quantity"] = quantity;
        }

        if (!string.IsNullOrWhiteSpace(draft.Unit))
        {
            json["unit"] = draft.Unit.Trim();
        }

        if (string.Join(", ", [.. ingredient.Preparation is { } how ? [how] : (IEnumerable<string>)[], .. ingredient.Unread]) is { Length: > 0 } preparation)
        {
            json["preparation"] = preparation;
        }

        if (ingredient.Alternatives.Length > 0)
        {
            json["alternatives"] = new JsonArray([.. ingredient.Alternatives.Select(one => JsonValue.Create(one))]);
        }

        json["written"] = ingredient.Text;
        return json;
    }

    static JsonObject Json(StepDraft step, string id, ApplianceId? fridge)
    {
        var json = new JsonObject { ["id"] = id, ["text"] = step.Text.Trim() };
        if (!string.IsNullOrWhiteSpace(step.How))
        {
            json["how"] = step.How.Trim();
        }

        json["minutes"] = step.Least == step.Most ? step.Likely : new JsonObject { ["least"] = step.Least, ["likely"] = step.Likely, ["most"] = step.Most };
        if (step.Attention != Attention.HandsOn)
        {
            json["attention"] = step.Attention == Attention.Nearby ? "nearby" : "unattended";
        }

        if (step is { Tend: { } tend, Attention: not Attention.HandsOn } && step.Least > (tend.Every ?? 2))
        {
            var job = new JsonObject { ["text"] = tend.Text };
            job[tend.Every is null ? "at" : "every"] = tend.Every ?? (step.Likely / 2);
            json["tend"] = new JsonArray(job);
        }

        if (UsesJson(step, fridge) is { } uses)
        {
            json["uses"] = new JsonArray(uses);
        }

        return json;
    }

    static JsonObject? UsesJson(StepDraft step, ApplianceId? fridge)
    {
        var celsius = step.Celsius ?? ModerateOven;
        return step.On switch
        {
            CookedOn.Oven => new()
            {
                ["oven"] = new JsonObject
                {
                    ["shelves"] = 1,
                    ["celsius"] = new JsonObject { ["min"] = celsius - StepDraft.OvenEitherSide, ["ideal"] = celsius, ["max"] = celsius + StepDraft.OvenEitherSide },
                },
            },
            CookedOn.Ring => new() { ["rings"] = 1 },
            CookedOn.Grill => new() { ["grill"] = true },
            CookedOn.Fridge => fridge is { } appliance ? new() { ["appliance"] = appliance.Value } : null,
            CookedOn.Nothing => null,
            _ => throw new System.Diagnostics.UnreachableException($"A step uses something unknown: {step.On}."),
        };
    }
}
