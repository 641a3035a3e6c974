using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>The open format that carries a meal in and out: "cookalong-meal/1".</summary>
public static class MealFile
{
    public const string Format = "cookalong-meal/1";

    /// <summary>Longest time from the first minute of the work to the last table time, in days.</summary>
    public const int MostDays = 14;

    /// <summary>Reads and checks the whole file; never throws, whatever the text.</summary>
    /// <param name="now">Table times must lie after it; null when the file may be old (an archive, a test).</param>
    public static MealFileRead Read(string json, Minute? now = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        var findings = new Findings();
        using var document = JsonText.Parse(json, findings);
        if (document is null)
        {
            return new(null, findings.All);
        }

        var meal = MealOf(new Place(document.RootElement, "", findings), now);
        return findings.Count == 0 ? new(meal, []) : new(null, findings.All);
    }

    /// <summary>The meal as a file with every default spelled out; reading it gives an equal meal.</summary>
    public static string Write(Meal meal)
    {
        ArgumentNullException.ThrowIfNull(meal);
        return new MealWriting(meal.TimeZone).Meal(meal).ToJsonString(JsonWords.Readable);
    }

    private static Meal? MealOf(Place root, Minute? now)
    {
        var format = root.Text("format");
        if (format.Length > 0 && format != Format)
        {
            root.Note("format", $"The format is \"{Place.Short(format)}\", not \"{Format}\".", "Choose a meal file; a plan or a newer version cannot be read as one.");
            return null;
        }

        var name = root.Text("name");
        var ids = new MealIds(ZoneOf(root));
        var before = root.Findings.Count;
        var kitchen = ReadKitchen(root, ids);
        var helpers = HelperReading.Helpers(root, ids);
        var roomIsSound = root.Findings.Count == before;
        var courses = Courses(root, ids);
        var guests = Guests(root);
        var dishes = DishReading.Dishes(root, ids, guests);
        var meal = new Meal(name, ids.Zone ?? TimeZoneInfo.Utc, root.Time("notBefore", ids.Zone), courses, guests, kitchen, helpers, dishes);

        MealTimesCheck.Check(root, meal, ids, now);
        MealOrderCheck.Check(root, meal, ids);
        if (roomIsSound)
        {
            // With a broken kitchen or broken helpers every step would look impossible.
            KitchenCheck.Check(root, meal, ids);
            HandsCheck.Check(root, meal, ids);
        }

        return meal;
    }

    private static TimeZoneInfo? ZoneOf(Place root)
    {
        if (!root.Has("timeZone"))
        {
            root.NoteMissing("timeZone", "Add an IANA name such as \"Europe/Berlin\".");
        }

        return WallClock.ZoneOf(root);
    }

    private static Kitchen ReadKitchen(Place root, MealIds ids)
    {
        if (root.Object("kitchen") is { } kitchen)
        {
            return KitchenReading.Kitchen(kitchen, ids);
        }

        if (!root.Has("kitchen"))
        {
            root.NoteMissing("kitchen", "Add \"kitchen\": { \"ovens\": [ ... ], \"rings\": 4 }.");
        }

        return new Kitchen([], 0, [], []);
    }

    private static ImmutableArray<Course> Courses(Place root, MealIds ids)
    {
        var courses = root.Objects("courses", 20);
        if (courses.Count == 0)
        {
            root.Note("courses", "The meal has no course.", "Add at least one with an id and a tableTime.");
        }

        return [.. courses.Select(course =>
        {
            var id = ids.Courses.Give(course);
            return new Course(new(id), course.OptionalText("name") ?? id, course.RequiredTime("tableTime", ids.Zone));
        })];
    }

    private static ImmutableArray<Guest> Guests(Place root) =>
        [.. root.Objects("guests", 500).Select(guest => new Guest(
            guest.Text("name"),
            guest.Number("portion", above: 0, most: 20, fallback: 1),
            [.. guest.Texts("diets", 50).Select(diet => diet.Text)],
            [.. guest.Texts("avoids", 50).Select(avoid => avoid.Text)]))];
}
