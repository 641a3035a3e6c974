using System.Text.Json.Nodes;
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

    public required IReadOnlyList<IngredientRead> Ingredients { get; init; }

    public required List<StepDraft> Steps { get; init; }

    /// <summary>What the recipe says of the whole.</summary>
    public required StatedTimes Stated { get; init; }

    /// <summary>Of its times, as they stand now.</summary>
    public IEnumerable<TimeDoubt> Doubts => TimeDoubt.Of(Stated, Steps);

    /// <param name="guests">Whom it is for where it does not say.</param>
    /// <param name="spoons">The household's.</param>
    public static DishDraft Of(RecipeRead recipe, int guests, SpoonSizes spoons)
    {
        List<StepDraft> steps = [.. recipe.Steps.Select(StepDraft.Of)];
        Guesses.Better(steps, recipe.Stated);
        Overlaps.Mark(steps);
        return new DishDraft
        {
            Name = recipe.Name.Length > 0 ? recipe.Name : "A dish without a name",
            Serves = recipe.Serves ?? guests,
            Ingredients = [.. recipe.Ingredients.Select(line => IngredientRead.Of(line, spoons))],
            Steps = steps,
            Stated = recipe.Stated,
        };
    }

    /// <summary>As a dish of a meal file (cookalong-meal/1).</summary>
    /// <param name="id">Free in the meal, for the dish and, with a number behind it, for its steps.</param>
    public JsonObject ToJson(string id, string course) => new()
    {
        ["id"] = id,
        ["name"] = Name.Trim(),
        ["course"] = course,
        ["serves"] = Serves,
        ["ingredients"] = new JsonArray([.. Ingredients.Select(Json)]),
        ["holds"] = new JsonArray(new JsonObject { ["place"] = "covered", ["bestWithin"] = 10, ["goodFor"] = 20, ["limit"] = 30 }),
        ["steps"] = StepsJson(id),
    };

    /// <summary>In a file steps follow each other unless one says what it waits for, so it is said only where that is something else.</summary>
    JsonArray StepsJson(string id)
    {
        var waits = Overlaps.WaitsFor(Steps);
        return [.. Steps.Select((step, i) =>
        {
            var json = Json(step, $"{id}-{i + 1}");
            if (!waits[i].SequenceEqual(i == 0 ? [] : [i - 1]))
            {
                json["after"] = new JsonArray([.. waits[i].Select(other => new JsonObject { ["step"] = $"{id}-{other + 1}" })]);
            }

            return json;
        })];
    }

    /// <summary>With the line as it was written, and of a range the most: what is bought must do.</summary>
    static JsonObject Json(IngredientRead ingredient)
    {
        var json = new JsonObject { ["name"] = ingredient.Name };
        if (ingredient.Most is { } most)
        {
            json["quantity"] = most;
        }

        if (ingredient.Unit is { } unit)
        {
            json["unit"] = unit;
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

    static JsonObject Json(StepDraft step, string id)
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

        if (UsesJson(step) is { } uses)
        {
            json["uses"] = new JsonArray(uses);
        }

        return json;
    }

    static JsonObject? UsesJson(StepDraft step)
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
            CookedOn.Nothing or CookedOn.Fridge => null,
            _ => throw new System.Diagnostics.UnreachableException($"A step uses something unknown: {step.On}."),
        };
    }
}
