using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;

namespace CookAlong.Web.Data;

/// <summary>
/// Events as the log keeps them. The kinds and the names inside never change; an event that must say more gets a new
/// version, and the old one is read for ever. Meals and plans are kept as their files.
/// </summary>
public static class StoredEvent
{
    public static (string Kind, string Document) Write(RunEvent happened, Meal meal)
    {
        var (kind, fields) = Fields(happened, meal);
        return (kind, fields.ToJsonString());
    }

    /// <param name="meal">The run's meal; null only for the event that brings it.</param>
    public static RunEvent Read(string kind, string document, Meal? meal)
    {
        var json = JsonNode.Parse(document)!.AsObject();
        return kind switch
        {
            "runStarted/1" => ReadStart(json),
            "authoritySet/1" => new RunEvent.AuthoritySet(RegionOf(Text(json, "region"))),
            "personJoined/1" => new RunEvent.PersonJoined(
                Person(json), Text(json, "name"), RoleOf(Text(json, "role")), json["helper"] is { } helper ? new HelperId(helper.GetValue<string>()) : null),
            "personPutOut/1" => new RunEvent.PersonPutOut(Person(json)),
            "stepStarted/1" => new RunEvent.StepStarted(Step(json)),
            "stepFinished/1" => new RunEvent.StepFinished(Step(json)),
            "stepTakenBack/1" => new RunEvent.StepTakenBack(Step(json)),
            "stepClaimed/1" => new RunEvent.StepClaimed(Step(json), new HelperId(Text(json, "helper"))),
            "stepLetGo/1" => new RunEvent.StepLetGo(Step(json), new HelperId(Text(json, "helper"))),
            "stepGiven/1" => new RunEvent.StepGiven(Step(json), new HelperId(Text(json, "to"))),
            "stepHandedOver/1" => new RunEvent.StepHandedOver(Step(json), new HelperId(Text(json, "from")), new HelperId(Text(json, "to"))),
            "givingTakenBack/1" => new RunEvent.GivingTakenBack(Step(json)),
            "claimKept/1" => new RunEvent.ClaimKept(Step(json), new HelperId(Text(json, "helper")), At(json, "until")),
            "claimFreed/1" => new RunEvent.ClaimFreed(Step(json), new HelperId(Text(json, "helper"))),
            "timeAdded/1" => new RunEvent.TimeAdded(Step(json), Number(json, "minutes")),
            "timeTakenBack/1" => new RunEvent.TimeTakenBack(Step(json), Number(json, "minutes")),
            "tendFinished/1" => new RunEvent.TendFinished(Step(json), Number(json, "tend"), Number(json, "turn")),
            "tendTakenBack/1" => new RunEvent.TendTakenBack(Step(json), Number(json, "tend"), Number(json, "turn")),
            "coreRead/1" => new RunEvent.CoreRead(Step(json), json["celsius"]!.GetValue<decimal>(), StoredWord.At(json["at"]!), StoredWord.Read(json["word"]!.AsObject())),
            "coreTakenBack/1" => new RunEvent.CoreTakenBack(Step(json)),
            "coreVouched/1" => new RunEvent.CoreVouched(Step(json), Text(json, "check")),
            "coreWordTakenBack/1" => new RunEvent.CoreWordTakenBack(Step(json)),
            "coverTakenBack/1" => new RunEvent.CoverTakenBack(Step(json), Number(json, "room"), json["rest"] is JsonObject rest ? StoredWord.ReadRest(rest) : null),
            "foilTakenBack/1" => new RunEvent.FoilTakenBack(Step(json)),
            "foilSet/1" => new RunEvent.FoilSet(Step(json), json["isOn"]!.GetValue<bool>()),
            "restCovered/1" => new RunEvent.RestCovered(Step(json), StoredWord.UnderOf(Text(json, "under")), Number(json, "room"), json["rest"] is JsonObject rest ? StoredWord.ReadRest(rest) : null),
            "callAcknowledged/1" => new RunEvent.CallAcknowledged(new CallId(Text(json, "call"))),
            "callTakenBack/1" => new RunEvent.CallTakenBack(new CallId(Text(json, "call"))),
            "kitchenPaused/1" => new RunEvent.KitchenPaused(json["after"] is { } after ? new StepId(after.GetValue<string>()) : null),
            "kitchenWentOn/1" => new RunEvent.KitchenWentOn(),
            "planAccepted/1" => new RunEvent.PlanAccepted(ReadPlan(json, meal ?? throw new InvalidDataException("A plan came before its meal."))),
            "planTakenBack/1" => new RunEvent.PlanTakenBack(ReadPlan(json, meal ?? throw new InvalidDataException("A plan came before its meal."))),
            "planRuleSet/1" => new RunEvent.PlanRuleSet(json["minutes"]?.GetValue<int>()),
            "helperLeft/1" => new RunEvent.HelperLeft(new HelperId(Text(json, "helper")), At(json, "from")),
            "helperStayed/1" => new RunEvent.HelperStayed(new HelperId(Text(json, "helper"))),
            "dishAdded/1" => ReadAdded(json),
            "dishDropped/1" => new RunEvent.DishDropped(new DishId(Text(json, "dish"))),
            "dishBroughtBack/1" => new RunEvent.DishBroughtBack(new DishId(Text(json, "dish"))),
            "tableMoved/1" => new RunEvent.TableMoved(new CourseId(Text(json, "course")), At(json, "to")),
            "tableMovedBack/1" => new RunEvent.TableMovedBack(new CourseId(Text(json, "course")), At(json, "to")),
            "ovenBehind/1" => new RunEvent.OvenBehind(new OvenId(Text(json, "oven")), At(json, "hotAt"), Number(json, "celsius")),
            "ovenCaughtUp/1" => new RunEvent.OvenCaughtUp(new OvenId(Text(json, "oven"))),
            "ovenRead/1" => new RunEvent.OvenRead(
                new OvenId(Text(json, "oven")),
                new OvenShown(StoredWord.At(json["at"]!), json["celsius"]!.GetValue<decimal>(), Number(json, "dial"), StoredWord.At(json["hotAt"]!))),
            "ovenReadTakenBack/1" => new RunEvent.OvenReadTakenBack(new OvenId(Text(json, "oven"))),
            "runEnded/1" => new RunEvent.RunEnded(),
            _ => throw new InvalidDataException($"The log holds an event \"{kind}\" that this version does not know. Was it written by a newer one?"),
        };
    }

    static (string Kind, JsonObject Fields) Fields(RunEvent happened, Meal meal) => happened switch
    {
        RunEvent.RunStarted e => ("runStarted/1", new()
        {
            ["meal"] = JsonNode.Parse(MealFile.Write(e.Meal)),
            ["plan"] = JsonNode.Parse(PlanFile.Write(e.Plan, e.Meal)),
        }),
        RunEvent.AuthoritySet e => ("authoritySet/1", new() { ["region"] = RegionName(e.Region) }),
        RunEvent.PersonJoined e => ("personJoined/1", new()
        {
            ["person"] = e.Person.ToString(),
            ["name"] = e.Name,
            ["role"] = RoleName(e.Role),
            ["helper"] = e.Helper?.Value,
        }),
        RunEvent.PersonPutOut e => ("personPutOut/1", new() { ["person"] = e.Person.ToString() }),
        RunEvent.StepStarted e => ("stepStarted/1", Of(e.Step)),
        RunEvent.StepFinished e => ("stepFinished/1", Of(e.Step)),
        RunEvent.StepTakenBack e => ("stepTakenBack/1", Of(e.Step)),
        RunEvent.StepClaimed e => ("stepClaimed/1", Of(e.Step, "helper", e.Helper.Value)),
        RunEvent.StepLetGo e => ("stepLetGo/1", Of(e.Step, "helper", e.Helper.Value)),
        RunEvent.StepGiven e => ("stepGiven/1", Of(e.Step, "to", e.To.Value)),
        RunEvent.StepHandedOver e => ("stepHandedOver/1", new() { ["step"] = e.Step.Value, ["from"] = e.From.Value, ["to"] = e.To.Value }),
        RunEvent.GivingTakenBack e => ("givingTakenBack/1", Of(e.Step)),
        RunEvent.ClaimKept e => ("claimKept/1", new() { ["step"] = e.Step.Value, ["helper"] = e.Helper.Value, ["until"] = At(e.Until) }),
        RunEvent.ClaimFreed e => ("claimFreed/1", Of(e.Step, "helper", e.Helper.Value)),
        RunEvent.TimeAdded e => ("timeAdded/1", Of(e.Step, "minutes", e.Minutes)),
        RunEvent.TimeTakenBack e => ("timeTakenBack/1", Of(e.Step, "minutes", e.Minutes)),
        RunEvent.TendFinished e => ("tendFinished/1", new() { ["step"] = e.Step.Value, ["tend"] = e.Tend, ["turn"] = e.Turn }),
        RunEvent.TendTakenBack e => ("tendTakenBack/1", new() { ["step"] = e.Step.Value, ["tend"] = e.Tend, ["turn"] = e.Turn }),
        RunEvent.CoreRead e => ("coreRead/1", new() { ["step"] = e.Step.Value, ["celsius"] = e.Celsius, ["at"] = StoredWord.Of(e.At), ["word"] = StoredWord.Write(e.Word) }),
        RunEvent.CoreTakenBack e => ("coreTakenBack/1", Of(e.Step)),
        RunEvent.CoreVouched e => ("coreVouched/1", Of(e.Step, "check", e.Check)),
        RunEvent.CoreWordTakenBack e => ("coreWordTakenBack/1", Of(e.Step)),
        RunEvent.CoverTakenBack e => ("coverTakenBack/1", new() { ["step"] = e.Step.Value, ["room"] = e.RoomCelsius, ["rest"] = e.Rest is { } rest ? StoredWord.Write(rest) : null }),
        RunEvent.FoilTakenBack e => ("foilTakenBack/1", Of(e.Step)),
        RunEvent.FoilSet e => ("foilSet/1", Of(e.Step, "isOn", e.IsOn)),
        RunEvent.RestCovered e => ("restCovered/1", new() { ["step"] = e.Step.Value, ["under"] = StoredWord.Of(e.Under), ["room"] = e.RoomCelsius, ["rest"] = e.Rest is { } rest ? StoredWord.Write(rest) : null }),
        RunEvent.CallAcknowledged e => ("callAcknowledged/1", new() { ["call"] = e.Call.Value }),
        RunEvent.CallTakenBack e => ("callTakenBack/1", new() { ["call"] = e.Call.Value }),
        RunEvent.KitchenPaused e => ("kitchenPaused/1", new() { ["after"] = e.After?.Value }),
        RunEvent.KitchenWentOn => ("kitchenWentOn/1", []),
        RunEvent.PlanAccepted e => ("planAccepted/1", new() { ["plan"] = JsonNode.Parse(PlanFile.Write(e.Plan, meal)) }),
        RunEvent.PlanTakenBack e => ("planTakenBack/1", new() { ["plan"] = JsonNode.Parse(PlanFile.Write(e.Plan, meal)) }),
        RunEvent.PlanRuleSet e => ("planRuleSet/1", new() { ["minutes"] = e.Minutes }),
        RunEvent.HelperLeft e => ("helperLeft/1", new() { ["helper"] = e.Helper.Value, ["from"] = At(e.From) }),
        RunEvent.HelperStayed e => ("helperStayed/1", new() { ["helper"] = e.Helper.Value }),
        RunEvent.DishAdded e => ("dishAdded/1", new()
        {
            ["dish"] = JsonNode.Parse(MealFile.Write(meal with { Dishes = [e.Dish] }))!["dishes"]![0]!.DeepClone(),
            ["starts"] = new JsonObject(e.Starts.Select(start => KeyValuePair.Create<string, JsonNode?>(start.Step.Value, At(start.Start)))),
        }),
        RunEvent.DishDropped e => ("dishDropped/1", new() { ["dish"] = e.Dish.Value }),
        RunEvent.DishBroughtBack e => ("dishBroughtBack/1", new() { ["dish"] = e.Dish.Value }),
        RunEvent.TableMoved e => ("tableMoved/1", new() { ["course"] = e.Course.Value, ["to"] = At(e.To) }),
        RunEvent.TableMovedBack e => ("tableMovedBack/1", new() { ["course"] = e.Course.Value, ["to"] = At(e.To) }),
        RunEvent.OvenBehind e => ("ovenBehind/1", new() { ["oven"] = e.Oven.Value, ["hotAt"] = At(e.HotAt), ["celsius"] = e.Celsius }),
        RunEvent.OvenCaughtUp e => ("ovenCaughtUp/1", new() { ["oven"] = e.Oven.Value }),
        RunEvent.OvenRead e => ("ovenRead/1", new()
        {
            ["oven"] = e.Oven.Value,
            ["at"] = StoredWord.Of(e.Reading.At),
            ["celsius"] = e.Reading.Celsius,
            ["dial"] = e.Reading.Dial,
            ["hotAt"] = StoredWord.Of(e.Reading.HotAt),
        }),
        RunEvent.OvenReadTakenBack e => ("ovenReadTakenBack/1", new() { ["oven"] = e.Oven.Value }),
        RunEvent.RunEnded => ("runEnded/1", []),
        _ => throw new UnreachableException($"No stored form is written for {happened.GetType().Name}."),
    };

    static RunEvent.RunStarted ReadStart(JsonObject json)
    {
        var read = MealFile.Read(json["meal"]!.ToJsonString());
        return read.IsGood
            ? new RunEvent.RunStarted(read.Meal, ReadPlan(json, read.Meal))
            : throw new InvalidDataException($"The log holds a meal that cannot be read: {read.Errors[0]}");
    }

    static RunEvent.DishAdded ReadAdded(JsonObject json)
    {
        var course = Text(json["dish"]!.AsObject(), "course");
        var read = DishFile.Read(json["dish"]!.ToJsonString());
        return read.IsGood
            ? new RunEvent.DishAdded(read.Dish with { Course = new CourseId(course) }, [.. json["starts"]!.AsObject().Select(start => new StepStart(new StepId(start.Key), At(start.Value!)))])
            : throw new InvalidDataException($"The log holds a dish that cannot be read: {read.Errors[0]}");
    }

    static Domain.Planning.Plan ReadPlan(JsonObject json, Meal meal)
    {
        var read = PlanFile.Read(json["plan"]!.ToJsonString(), meal);
        return read.IsGood ? read.Plan : throw new InvalidDataException($"The log holds a plan that cannot be read: {read.Errors[0]}");
    }

    static JsonObject Of(StepId step) => new() { ["step"] = step.Value };

    static JsonObject Of(StepId step, string name, JsonNode value) => new() { ["step"] = step.Value, [name] = value };

    static StepId Step(JsonObject json) => new(Text(json, "step"));

    static PersonId Person(JsonObject json) => new(Guid.Parse(Text(json, "person")));

    static string Text(JsonObject json, string name) => json[name]!.GetValue<string>();

    static int Number(JsonObject json, string name) => json[name]!.GetValue<int>();

    static string At(Minute at) => at.Utc.ToString("yyyy-MM-dd'T'HH:mm'Z'", CultureInfo.InvariantCulture);

    static Minute At(JsonObject json, string name) => At(json[name]!);

    static Minute At(JsonNode node) => Minute.Of(DateTimeOffset.Parse(node.GetValue<string>(), CultureInfo.InvariantCulture));

    static string RegionName(Region region) => region switch
    {
        Region.UnitedKingdom => "unitedKingdom",
        Region.Scotland => "scotland",
        Region.UnitedStates => "unitedStates",
        Region.Canada => "canada",
        _ => throw new UnreachableException($"A region without a name: {region}."),
    };

    static Region RegionOf(string name) => name switch
    {
        "unitedKingdom" => Region.UnitedKingdom,
        "scotland" => Region.Scotland,
        "unitedStates" => Region.UnitedStates,
        "canada" => Region.Canada,
        _ => throw new InvalidDataException($"The log holds a region \"{name}\" that this version does not know."),
    };

    static string RoleName(Role role) => role switch
    {
        Role.Watcher => "watcher",
        Role.Helper => "helper",
        Role.Host => "host",
        _ => throw new UnreachableException($"A role without a name: {role}."),
    };

    static Role RoleOf(string name) => name switch
    {
        "watcher" => Role.Watcher,
        "helper" => Role.Helper,
        "host" => Role.Host,
        _ => throw new InvalidDataException($"The log holds a role \"{name}\" that this version does not know."),
    };
}
