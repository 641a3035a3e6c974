using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>
/// A dish that is edited as a document, so that fields this program does not know stay. After an edit read the
/// <see cref="Text"/> again before keeping it, for an edit may make a dish that cannot be.
/// </summary>
public sealed partial class DishDocument
{
    private readonly JsonObject root;

    private DishDocument(JsonObject root) => this.root = root;

    /// <exception cref="ArgumentException">The text is no dish; ask <see cref="DishFile.Read"/> first.</exception>
    public static DishDocument Of(string json)
    {
        var read = DishFile.Read(json);
        return read.IsGood
            ? new DishDocument(JsonNode.Parse(json.TrimStart('\uFEFF'))!.AsObject())
            : throw new ArgumentException($"not a dish: {read.Errors[0].Place} {read.Errors[0].Problem}", nameof(json));
    }

    /// <summary>A dish to begin with: one step, ten minutes.</summary>
    public static DishDocument New(string name) => new(new JsonObject
    {
        ["id"] = "dish",
        ["name"] = name,
        ["serves"] = 4,
        ["steps"] = new JsonArray(new JsonObject { ["id"] = "step-1", ["text"] = "Make it", ["minutes"] = 10 }),
    });

    /// <summary>A dish of a meal without what belongs to that meal: its people, clock times, ovens by name and other dishes' steps.</summary>
    internal static DishDocument Alone(JsonObject dish)
    {
        var own = dish.DeepClone().AsObject();
        var id = DishFile.TextOf(own["id"])!;
        var steps = DishFile.Entries(own, "steps").ToList();
        var names = steps.Select(step => DishFile.TextOf(step["id"])!).ToHashSet(StringComparer.Ordinal);
        string Short(string step) => step.StartsWith($"{id}-", StringComparison.Ordinal) && !names.Contains(step[(id.Length + 1)..]) ? step[(id.Length + 1)..] : step;
        foreach (var step in steps)
        {
            foreach (var member in new[] { "at", "window", "by", "choice" })
            {
                step.Remove(member);
            }

            foreach (var use in DishFile.Entries(step, "options").Prepend(step).SelectMany(way => DishFile.Entries(way, "uses")))
            {
                (use["oven"] as JsonObject)?.Remove("id");
                if (use.ContainsKey("grill"))
                {
                    use["grill"] = true;
                }
            }

            foreach (var link in DishFile.Entries(step, "after").ToList())
            {
                var other = DishFile.TextOf(link["step"])!;
                link["step"] = Short(other);
                if (!names.Contains(other))
                {
                    step["after"]!.AsArray().Remove(link);
                }
            }

            step["id"] = Short(DishFile.TextOf(step["id"])!);
        }

        own.Remove("course");
        own.Remove("fromDish");
        return new DishDocument(own);
    }

    public string Text => root.ToJsonString(JsonWords.Readable);

    /// <summary>Kind of food, of <see cref="KindsOfFood"/>; null when nobody has said.</summary>
    public string? Kind => DishFile.TextOf(root["kind"]);

    /// <summary>Feast or meal it belongs to, in the household's words.</summary>
    public string? Occasion => DishFile.TextOf(root["occasion"]);

    /// <summary>Whose dish it is.</summary>
    public string? Household => DishFile.TextOf(root["household"]);

    /// <param name="kind">Null or empty takes it away.</param>
    public void SetKind(string? kind) => Say("kind", kind);

    public void SetOccasion(string? occasion) => Say("occasion", occasion);

    public void Rename(string name) => root["name"] = name.Trim();

    /// <summary>Writes what the change changes, and leaves all else, unknown fields too. Order and number of steps: see Move, Add and Remove.</summary>
    public void Change(Func<Dish, Dish> change)
    {
        var before = DishFile.Read(Text).Dish!;
        var writing = new MealWriting(TimeZoneInfo.Utc);
        Merge(root, writing.Dish(before), writing.Dish(change(before)));
    }

    public void Change(int step, Func<Step, Step> change) => Change(dish => dish with { Steps = dish.Steps.SetItem(step, change(dish.Steps[step])) });

    /// <summary>Takes an entry out of "ingredients" or "holds".</summary>
    public void RemoveEntry(string list, int index) => root[list]!.AsArray().RemoveAt(index);

    /// <summary>As a dish of a meal.</summary>
    /// <param name="id">Free in the meal, also as the beginning of steps' ids.</param>
    /// <param name="from">What the dish of the library is called there, for "used in".</param>
    internal JsonObject InAMeal(string id, CourseId course, string from)
    {
        var dish = root.DeepClone().AsObject();
        (dish["id"], dish["course"], dish["fromDish"]) = (id, course.Value, from);
        foreach (var step in DishFile.Entries(dish, "steps"))
        {
            step["id"] = $"{id}-{DishFile.TextOf(step["id"])}";
            foreach (var link in DishFile.Entries(step, "after"))
            {
                link["step"] = $"{id}-{DishFile.TextOf(link["step"])}";
            }
        }

        return dish;
    }

    private void Say(string member, string? words)
    {
        if (string.IsNullOrWhiteSpace(words))
        {
            root.Remove(member);
        }
        else
        {
            root[member] = words.Trim();
        }
    }

    /// <summary>Where two writings differ, the target gets the later one.</summary>
    private static void Merge(JsonObject target, JsonObject before, JsonObject after)
    {
        foreach (var name in before.Select(one => one.Key).Union(after.Select(one => one.Key)).Where(name => !JsonNode.DeepEquals(before[name], after[name])))
        {
            switch (target[name], before[name], after[name])
            {
                case (_, _, null):
                    target.Remove(name);
                    break;
                case (JsonObject inner, JsonObject was, JsonObject becomes):
                    Merge(inner, was, becomes);
                    break;
                case (JsonArray inner, JsonArray was, JsonArray becomes) when inner.Count == was.Count && inner.Concat(was).Concat(becomes).All(one => one is JsonObject):
                    MergeEntries(inner, was, becomes);
                    break;
                case (_, _, var becomes):
                    target[name] = becomes.DeepClone();
                    break;
            }
        }
    }

    private static void MergeEntries(JsonArray target, JsonArray before, JsonArray after)
    {
        for (var index = 0; index < Math.Min(before.Count, after.Count); index++)
        {
            Merge(target[index]!.AsObject(), before[index]!.AsObject(), after[index]!.AsObject());
        }

        while (target.Count > after.Count)
        {
            target.RemoveAt(target.Count - 1);
        }

        for (var index = target.Count; index < after.Count; index++)
        {
            target.Add(after[index]!.DeepClone());
        }
    }
}
