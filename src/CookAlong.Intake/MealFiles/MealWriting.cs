using System.Globalization;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;
using static CookAlong.Intake.Reading.JsonWords;

namespace CookAlong.Intake.MealFiles;

/// <summary>A meal as its file says it, with every order and default spelled out.</summary>
internal sealed class MealWriting(TimeZoneInfo zone)
{
    public JsonObject Meal(Meal meal) => Object(
        ("format", MealFile.Format),
        ("name", meal.Name),
        ("timeZone", meal.TimeZone.Id),
        ("notBefore", Time(meal.NotBefore)),
        ("courses", List(meal.Courses.Select(course => Object(
            ("id", course.Id.Value), ("name", course.Name), ("tableTime", Time(course.TableTime)))))),
        ("guests", List(meal.Guests.Select(guest => Object(
            ("name", guest.Name), ("portion", guest.Portion), ("diets", Texts(guest.Diets).OrNothing()), ("avoids", Texts(guest.Avoids).OrNothing())))).OrNothing()),
        ("kitchen", Kitchen(meal.Kitchen)),
        ("helpers", List(meal.Helpers.Select(Helper))),
        ("dishes", List(meal.Dishes.Select(Dish))));

    private JsonValue? Time(Minute? at) => at is { } minute ? JsonValue.Create(WallClock.Write(minute, zone)) : null;

    public JsonObject Span(Window window) => Object(("from", Time(window.From)), ("to", Time(window.To)));

    private static JsonObject Kitchen(Kitchen kitchen) => Object(
        ("ovens", List(kitchen.Ovens.Select(oven => Object(
            ("id", oven.Id.Value),
            ("name", oven.Name),
            ("shelves", oven.Shelves),
            ("fan", oven.Fan),
            ("minCelsius", oven.Min),
            ("maxCelsius", oven.Max),
            ("heatUpPerMinute", oven.HeatUpPerMinute),
            ("coolDownPerMinute", oven.CoolDownPerMinute),
            ("startsAtCelsius", oven.StartsAt),
            ("readsHighBy", oven.ReadsHighBy == 0 ? null : oven.ReadsHighBy)))).OrNothing()),
        ("rings", kitchen.Rings),
        ("grills", List(kitchen.Grills.Select(grill => Object(("id", grill.Id.Value), ("insideOven", grill.InsideOven?.Value)))).OrNothing()),
        ("appliances", List(kitchen.Appliances.Select(appliance => Object(("id", appliance.Id.Value), ("count", appliance.Count)))).OrNothing()),
        ("awake", Awake(kitchen.Awake)));

    public static JsonObject Awake(WakingHours hours) => Object(
        ("from", hours.Up.ToString("HH:mm", CultureInfo.InvariantCulture)), ("to", hours.Bed.ToString("HH:mm", CultureInfo.InvariantCulture)));

    public JsonObject Helper(Helper helper) => Object(
        ("id", helper.Id.Value),
        ("name", helper.Name),
        ("available", List(helper.Available.Select(Span)).OrNothing()),
        ("can", helper.Can is { } can ? Texts(can.Order(StringComparer.Ordinal)) : null),
        ("child", Flag(helper.IsChild)));

    public JsonObject Dish(Dish dish) => Object(
        ("id", dish.Id.Value),
        ("name", dish.Name),
        ("course", dish.Course.Value),
        ("serves", dish.Serves),
        ("ingredients", List(dish.Ingredients.Select(ingredient => Object(
            ("name", ingredient.Name),
            ("quantity", ingredient.Quantity),
            ("unit", ingredient.Unit),
            ("preparation", ingredient.Preparation),
            ("contains", Texts(ingredient.Contains).OrNothing()),
            ("alternatives", Texts(ingredient.Alternatives).OrNothing()),
            ("written", ingredient.Written)))).OrNothing()),
        ("holds", List(dish.Holds.Select(Hold))),
        ("steps", List(dish.Steps.Select(Step))));

    public static JsonObject Hold(Hold hold) => Object(
        ("place", HoldReading.Places.WordFor(hold.Place)),
        ("least", hold.Least),
        ("bestWithin", hold.BestWithin),
        ("goodFor", hold.GoodFor),
        ("limit", hold.Limit),
        ("costPerMinute", hold.CostPerMinute),
        ("celsius", hold.Oven is { } oven ? Celsius(oven.Celsius) : null),
        ("shelves", hold.Oven?.Shelves),
        ("standFirst", hold.Oven?.StandFirst));

    private JsonObject Step(Step step) => Object(
        ("id", step.Id.Value),
        ("text", step.Text),
        ("how", step.How),
        ("caution", step.Caution),
        ("minutes", Minutes(step.Way.Minutes)),
        ("attention", WayReading.Attentions.WordFor(step.Way.Attention)),
        ("people", step.Way.People),
        ("needs", Texts(step.Needs).OrNothing()),
        ("childSafe", Flag(step.ChildSafe)),
        ("uses", Uses(step.Way.Uses).OrNothing()),
        ("after", List(step.After.Select(After))),
        ("tend", List(step.Tends.Select(Tend)).OrNothing()),
        ("options", List(step.Options.Select(Option)).OrNothing()),
        ("at", Time(step.At)),
        ("window", step.Window is { } window ? Span(window) : null),
        ("by", Texts(step.By.Select(helper => helper.Value)).OrNothing()),
        ("choice", step.Choice),
        ("pauseAfter", Flag(step.PauseAfter)),
        ("core", step.Core is { } core ? Core(core) : null));

    private static JsonObject Core(CoreWanted core) => Object(
        ("celsius", core.Celsius),
        ("minutes", core.Minutes == 0 ? null : core.Minutes),
        ("cut", core.Joint is { } joint ? CoreWantedReading.Cuts.WordFor(joint.Cut) : null),
        ("kilograms", core.Joint?.Kilograms),
        ("stuffed", core.Joint is { Stuffed: true } ? true : null));

    private static JsonObject Option(Way way) => Object(
        ("minutes", Minutes(way.Minutes)),
        ("attention", WayReading.Attentions.WordFor(way.Attention)),
        ("people", way.People),
        ("uses", Uses(way.Uses)));

    public static JsonObject After(After after) => Object(
        ("step", after.Step.Value),
        ("gap", after is { Least: 0, Most: null } ? null : Object(("least", after.Least), ("most", after.Most))));

    private static JsonObject Tend(Tend tend) => Object(
        ("text", tend.Text),
        ("minutes", tend.Minutes),
        ("every", tend.Every),
        ("at", tend.At),
        ("give", tend.Give),
        ("childSafe", Flag(tend.ChildSafe)));

    private static JsonNode Minutes(Durations minutes) => minutes.Least == minutes.Likely && minutes.Likely == minutes.Most
        ? JsonValue.Create(minutes.Likely)
        : Object(("least", minutes.Least), ("likely", minutes.Likely), ("most", minutes.Most));

    private static JsonArray Uses(Uses uses)
    {
        var list = new JsonArray();
        if (uses.Oven is { } oven)
        {
            list.Add(Object(("oven", Object(("id", oven.Oven?.Value), ("shelves", oven.Shelves), ("celsius", Celsius(oven.Celsius))))));
        }

        if (uses.Rings > 0)
        {
            list.Add(Object(("rings", uses.Rings)));
        }

        if (uses.Grill is { } grill)
        {
            list.Add(Object(("grill", grill.Grill is { } id ? id.Value : true)));
        }

        foreach (var appliance in uses.Appliances)
        {
            list.Add(Object(("appliance", appliance.Value)));
        }

        return list;
    }

    private static JsonObject Celsius(CelsiusRange range) => Object(("min", range.Min), ("ideal", range.Ideal), ("max", range.Max));

    private static JsonValue? Flag(bool isSo) => isSo ? JsonValue.Create(true) : null;
}
