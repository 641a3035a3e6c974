using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

// What makes a meal a household's own: its courses, guests, kitchen and people.
public sealed partial class MealDocument
{
    /// <summary>A meal of one course and one dish of the library.</summary>
    /// <param name="like">Whose kitchen, people and guests it has; null = one oven, four rings and the host cook.</param>
    /// <exception cref="ArgumentException">There is no such clock time on that day, or the name is none; the message says which.</exception>
    public static MealDocument New(string name, TimeZoneInfo zone, DateTime table, Meal? like, DishDocument first, string from)
    {
        var course = new CourseId("main");
        var root = new JsonObject
        {
            ["format"] = MealFile.Format,
            ["name"] = name,
            ["timeZone"] = zone.Id,
            ["courses"] = new JsonArray(new JsonObject { ["id"] = course.Value, ["name"] = "Main course", ["tableTime"] = WallClock.Write(table) }),
            ["kitchen"] = like is null ? UsualKitchen() : new MealWriting(zone).Meal(like)["kitchen"]!.DeepClone(),
        };
        foreach (var list in like is null ? [] : new[] { "guests", "helpers" })
        {
            if (new MealWriting(zone).Meal(like!)[list] is { } entries)
            {
                root[list] = entries.DeepClone();
            }
        }

        // Hours of another day are nobody's hours of this one.
        foreach (var helper in Entries(root, "helpers"))
        {
            helper.Remove("available");
        }

        var document = new MealDocument(root, zone);
        document.Add(first, from, course);
        return Of(document.Text);
    }

    /// <summary>Of an ordinary flat; common practice, no source. A measured one is better.</summary>
    static JsonObject UsualKitchen() => new()
    {
        ["ovens"] = new JsonArray(new JsonObject { ["id"] = "oven", ["name"] = "Oven", ["shelves"] = 3, ["fan"] = true, ["minCelsius"] = 50, ["maxCelsius"] = 250, ["heatUpPerMinute"] = 12, ["coolDownPerMinute"] = 8 }),
        ["rings"] = 4,
    };

    public void PutRings(int rings) => Kitchen["rings"] = rings;

    public void Put(WakingHours awake) => Kitchen["awake"] = MealWriting.Awake(awake);

    public void Change(Func<WakingHours, WakingHours> change) => Put(change(Now.Kitchen.Awake));

    /// <summary>Changes the oven of that id, or adds it.</summary>
    public void Put(Oven oven)
    {
        var entry = EntryOrNew(Kitchen, "ovens", oven.Id.Value);
        (entry["name"], entry["shelves"], entry["fan"], entry["minCelsius"], entry["maxCelsius"]) = (oven.Name, oven.Shelves, oven.Fan, oven.Min, oven.Max);
        (entry["heatUpPerMinute"], entry["coolDownPerMinute"]) = (oven.HeatUpPerMinute, oven.CoolDownPerMinute);
        Set(entry, "readsHighBy", oven.ReadsHighBy == 0 ? null : oven.ReadsHighBy);
    }

    public void Change(OvenId oven, Func<Oven, Oven> change) => Put(change(Now.Kitchen.Ovens.Single(one => one.Id == oven)));

    /// <summary>With the grill that is inside it.</summary>
    public void Remove(OvenId oven)
    {
        RemoveWhere(Kitchen, "ovens", entry => IdOf(entry) == oven.Value);
        RemoveWhere(Kitchen, "grills", entry => entry["insideOven"]?.GetValue<string>() == oven.Value);
    }

    public void Put(Grill grill) => Set(EntryOrNew(Kitchen, "grills", grill.Id.Value), "insideOven", grill.InsideOven?.Value);

    public void Remove(GrillId grill) => RemoveWhere(Kitchen, "grills", entry => IdOf(entry) == grill.Value);

    public void Put(Appliance appliance) => EntryOrNew(Kitchen, "appliances", appliance.Id.Value)["count"] = appliance.Count;

    public void Remove(ApplianceId appliance) => RemoveWhere(Kitchen, "appliances", entry => IdOf(entry) == appliance.Value);

    /// <summary>Changes the helper of that id, or adds them.</summary>
    public void Put(Helper helper)
    {
        // A file that names nobody has its host cook, who must not go when somebody else comes.
        if (root["helpers"] is not JsonArray { Count: > 0 })
        {
            root["helpers"] = JsonWords.List(Now.Helpers.Select(new MealWriting(zone).Helper));
        }

        var written = new MealWriting(zone).Helper(helper);
        var entry = EntryOrNew(root, "helpers", helper.Id.Value);
        foreach (var name in new[] { "name", "available", "can", "child" })
        {
            Set(entry, name, written[name]?.DeepClone());
        }
    }

    public void Change(HelperId helper, Func<Helper, Helper> change) => Put(change(Now.Helpers.Single(one => one.Id == helper)));

    /// <summary>What they were given is the planner's to give again.</summary>
    public void Remove(HelperId helper)
    {
        RemoveWhere(root, "helpers", entry => IdOf(entry) == helper.Value);
        foreach (var step in Steps.Where(step => step["by"] is JsonArray by && by.Any(one => one?.GetValue<string>() == helper.Value)))
        {
            step.Remove("by");
        }
    }

    /// <param name="place">From 0; as many as there are = one more.</param>
    public void PutGuest(int place, Guest guest)
    {
        if (root["guests"] is not JsonArray guests)
        {
            root["guests"] = guests = [];
        }

        var entry = place < guests.Count ? guests[place]!.AsObject() : [];
        (entry["name"], entry["portion"]) = (guest.Name, guest.Portion);
        Set(entry, "diets", guest.Diets.IsEmpty ? null : JsonWords.Texts(guest.Diets));
        Set(entry, "avoids", guest.Avoids.IsEmpty ? null : JsonWords.Texts(guest.Avoids));
        if (place >= guests.Count)
        {
            guests.Add(entry);
        }
    }

    public void ChangeGuest(int place, Func<Guest, Guest> change) => PutGuest(place, change(Now.Guests[place]));

    public void RemoveGuest(int place) => root["guests"]!.AsArray().RemoveAt(place);

    public void Add(Course course)
    {
        var entry = EntryOrNew(root, "courses", course.Id.Value);
        (entry["name"], entry["tableTime"]) = (course.Name, WallClock.Write(course.TableTime, zone));
    }

    public void Rename(CourseId course, string name) => Entry("courses", course.Value)["name"] = name;

    public void Remove(CourseId course) => RemoveWhere(root, "courses", entry => IdOf(entry) == course.Value);

    public void MoveDish(DishId dish, CourseId course) => Entry("dishes", dish.Value)["course"] = course.Value;

    /// <summary>An id that none of these has, made of a name.</summary>
    public static string FreeId(string name, IEnumerable<string> taken)
    {
        var (id, known) = (Plain(name, "one"), taken.ToHashSet(StringComparer.Ordinal));
        return known.Contains(id) ? Enumerable.Range(2, known.Count + 1).Select(number => string.Create(CultureInfo.InvariantCulture, $"{id}-{number}")).First(one => !known.Contains(one)) : id;
    }

    /// <summary>As the file stands.</summary>
    private Meal Now => MealFile.Read(Text).Meal!;

    /// <summary>"Leek tart, warm" is "leek-tart-warm".</summary>
    private static string Plain(string name, string otherwise)
    {
        var plain = string.Join('-', new string([.. name.ToLowerInvariant().Select(sign => char.IsAsciiLetterOrDigit(sign) ? sign : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(5));
        return plain.Length > 0 ? plain : otherwise;
    }

    private static JsonObject EntryOrNew(JsonObject owner, string list, string id)
    {
        if (owner[list] is not JsonArray entries)
        {
            owner[list] = entries = [];
        }

        if (entries.OfType<JsonObject>().FirstOrDefault(one => IdOf(one) == id) is { } known)
        {
            return known;
        }

        var entry = new JsonObject { ["id"] = id };
        entries.Add(entry);
        return entry;
    }

    private static void RemoveWhere(JsonObject owner, string list, Func<JsonObject, bool> isMeant)
    {
        foreach (var entry in Entries(owner, list).Where(isMeant).ToList())
        {
            owner[list]!.AsArray().Remove(entry);
        }
    }
}
