using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>A command as a screen sends it: {"kind":"finishStep","step":"goose-roast"}.</summary>
static class WireCommand
{
    /// <summary>Longest id of anything, in characters.</summary>
    const int LongestId = 200;

    /// <summary>Null when it is none. A plan is named by its offer, which must still stand.</summary>
    /// <param name="offered">The offer of that id; null when there is none any more.</param>
    public static RunCommand? Read(JsonElement json, Func<Guid, RunCommand.AcceptPlan?> offered)
    {
        if (json.ValueKind != JsonValueKind.Object)
        {
            return null;
        }

        return Text(json, "kind") switch
        {
            "startStep" => Step(json) is { } step ? new RunCommand.StartStep(step) : null,
            "finishStep" => Step(json) is { } step ? new RunCommand.FinishStep(step) : null,
            "takeBack" => Step(json) is { } step ? new RunCommand.TakeBack(step) : null,
            "claimStep" => Step(json) is { } step ? new RunCommand.ClaimStep(step) : null,
            "letGoStep" => Step(json) is { } step ? new RunCommand.LetGoStep(step) : null,
            "giveStep" => Step(json) is { } step && Text(json, "to") is { } to ? new RunCommand.GiveStep(step, new HelperId(to)) : null,
            "takeBackGiving" => Step(json) is { } step ? new RunCommand.TakeBackGiving(step) : null,
            "takeOver" => Step(json) is { } step ? new RunCommand.TakeOver(step) : null,
            "keepStep" => Step(json) is { } step ? new RunCommand.KeepStep(step) : null,
            "takeBackTime" => Step(json) is { } step && Number(json, "minutes") is { } added ? new RunCommand.TakeBackTime(step, added) : null,
            "takeBackTend" => Step(json) is { } step && Number(json, "tend") is { } tend && Number(json, "turn") is { } turn
                ? new RunCommand.TakeBackTend(step, tend, turn)
                : null,
            "takeBackAnswer" => Text(json, "call") is { } call ? new RunCommand.TakeBackAnswer(new CallId(call)) : null,
            "takeBackPlan" => new RunCommand.TakeBackPlan(),
            "helperStays" => Text(json, "helper") is { } helper ? new RunCommand.HelperStays(new HelperId(helper)) : null,
            "bringBackDish" => Text(json, "dish") is { } dish ? new RunCommand.BringBackDish(new DishId(dish)) : null,
            "takeBackTable" => Text(json, "course") is { } course ? new RunCommand.TakeBackTable(new CourseId(course)) : null,
            "ovenOnTime" => Text(json, "oven") is { } oven ? new RunCommand.OvenOnTime(new OvenId(oven)) : null,
            "setPlanRule" => Number(json, "minutes") is { } farthest ? new RunCommand.SetPlanRule(farthest)
                : json.TryGetProperty("minutes", out var none) && none.ValueKind == JsonValueKind.Null ? new RunCommand.SetPlanRule(null)
                : null,
            "addTime" => Step(json) is { } step && Number(json, "minutes") is { } minutes ? new RunCommand.AddTime(step, minutes) : null,
            "finishTend" => Step(json) is { } step && Number(json, "tend") is { } tend && Number(json, "turn") is { } turn
                ? new RunCommand.FinishTend(step, tend, turn)
                : null,
            "readCore" => Step(json) is { } step && Decimal(json, "celsius") is { } celsius ? new RunCommand.ReadCore(step, celsius, Moment(json, "at")) : null,
            "takeBackReading" => Step(json) is { } step ? new RunCommand.TakeBackReading(step) : null,
            "vouchFor" => Step(json) is { } step && Text(json, "check") is { } check ? new RunCommand.VouchFor(step, check) : null,
            "setFoil" => Step(json) is { } step && json.TryGetProperty("isOn", out var isOn) && isOn.ValueKind is JsonValueKind.True or JsonValueKind.False ? new RunCommand.SetFoil(step, isOn.GetBoolean()) : null,
            "coverRest" => Step(json) is { } step && Text(json, "under") is { } name && Under(name) is { } under && Number(json, "room") is { } room ? new RunCommand.CoverRest(step, under, room) : null,
            "takeBackFoil" => Step(json) is { } step ? new RunCommand.TakeBackFoil(step) : null,
            "takeBackCover" => Step(json) is { } step ? new RunCommand.TakeBackCover(step) : null,
            "takeBackWord" => Step(json) is { } step ? new RunCommand.TakeBackWord(step) : null,
            "acknowledge" => Text(json, "call") is { } call ? new RunCommand.Acknowledge(new CallId(call)) : null,
            "holdEverything" => new RunCommand.HoldEverything(),
            "goOn" => new RunCommand.GoOn(),
            "acceptPlan" => Id(json, "plan") is { } plan ? offered(plan) : null,
            "putOut" => Id(json, "person") is { } person ? new RunCommand.PutOut(new PersonId(person)) : null,
            "helperLeaves" => Text(json, "helper") is { } helper && Number(json, "minutes") is { } inMinutes
                ? new RunCommand.HelperLeaves(new HelperId(helper), inMinutes)
                : null,
            "dropDish" => Text(json, "dish") is { } dish ? new RunCommand.DropDish(new DishId(dish)) : null,
            "moveTable" => Text(json, "course") is { } course && Number(json, "minutes") is { } by ? new RunCommand.MoveTable(new CourseId(course), by) : null,
            "ovenStillHeats" => Text(json, "oven") is { } oven && Number(json, "minutes") is { } left ? new RunCommand.OvenStillHeats(new OvenId(oven), left) : null,
            "readOven" => Text(json, "oven") is { } oven && (Decimal(json, "celsius") ?? InCelsius(Decimal(json, "fahrenheit"))) is { } shown
                ? new RunCommand.ReadOven(new OvenId(oven), shown, Moment(json, "at"))
                : null,
            "takeBackOvenReading" => Text(json, "oven") is { } oven ? new RunCommand.TakeBackOvenReading(new OvenId(oven)) : null,
            "endRun" => new RunCommand.EndRun(),

            // Not only unknown kinds: joining is not a screen's to ask for.
            _ => null,
        };
    }

    /// <summary>Which dish of the library is to be added to which course; null when the tap asks for something else.</summary>
    public static (Guid Dish, CourseId Course)? AddDish(JsonElement json) =>
        json.ValueKind == JsonValueKind.Object && Text(json, "kind") == "addDish" && Id(json, "dish") is { } dish && Text(json, "course") is { } course
            ? (dish, new CourseId(course))
            : null;

    public static bool IsAcceptPlan(JsonElement json) => json.ValueKind == JsonValueKind.Object && Text(json, "kind") == "acceptPlan" && Id(json, "plan") is not null;

    static RestUnder? Under(string name) => name switch
    {
        "nothing" => RestUnder.Nothing,
        "foil" => RestUnder.Foil,
        "foilAndCloths" => RestUnder.FoilAndCloths,
        _ => null,
    };

    static StepId? Step(JsonElement json) => Text(json, "step") is { } step ? new StepId(step) : null;

    static string? Text(JsonElement json, string name) =>
        json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String && value.GetString() is { Length: > 0 and <= LongestId } text ? text : null;

    static int? Number(JsonElement json, string name) =>
        json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out var number) ? number : null;

    static decimal? Decimal(JsonElement json, string name) =>
        json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number && value.TryGetDecimal(out var number) ? number : null;

    /// <summary>Only what a thermometer could show: a number beyond has no °C that a decimal holds.</summary>
    static decimal? InCelsius(decimal? fahrenheit) => fahrenheit is > -1000 and < 10_000 ? (fahrenheit - 32) / 1.8m : null;

    /// <summary>Milliseconds since the Unix epoch.</summary>
    static DateTimeOffset? Moment(JsonElement json, string name) =>
        json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out var at) && at is > 0 and < 100_000_000_000_000
            ? DateTimeOffset.FromUnixTimeMilliseconds(at)
            : null;

    static Guid? Id(JsonElement json, string name) =>
        json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String && value.TryGetGuid(out var id) ? id : null;
}
