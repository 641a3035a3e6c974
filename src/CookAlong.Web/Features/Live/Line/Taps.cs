using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Calls;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>The commands that buttons carry (<c>data-tap</c>), in the shape in which the script sends them.</summary>
public static class Taps
{
    public static string Start(StepId step) => Json(new { kind = "startStep", step = step.Value });

    public static string Finish(BoardCard card) => card.Tend is { } tend
        ? Json(new { kind = "finishTend", step = card.Step.Id.Value, tend = tend.Tend, turn = tend.Turn })
        : Json(new { kind = "finishStep", step = card.Step.Id.Value });

    public static string TakeBack(StepId step) => Json(new { kind = "takeBack", step = step.Value });

    public static string Claim(StepId step) => Json(new { kind = "claimStep", step = step.Value });

    public static string LetGo(StepId step) => Json(new { kind = "letGoStep", step = step.Value });

    public static string Give(StepId step, HelperId to) => Json(new { kind = "giveStep", step = step.Value, to = to.Value });

    public static string TakeBackGiving(StepId step) => Json(new { kind = "takeBackGiving", step = step.Value });

    public static string TakeOver(StepId step) => Json(new { kind = "takeOver", step = step.Value });

    public static string Keep(StepId step) => Json(new { kind = "keepStep", step = step.Value });

    public static string AddTime(StepId step, int minutes) => Json(new { kind = "addTime", step = step.Value, minutes });

    /// <summary>The script fills in what was typed beside the button.</summary>
    public static string ReadCore(StepId step) => Json(new { kind = "readCore", step = step.Value });

    public static string TakeBackReading(StepId step) => Json(new { kind = "takeBackReading", step = step.Value });

    /// <summary>The script fills in what was typed beside the button.</summary>
    public static string VouchFor(StepId step) => Json(new { kind = "vouchFor", step = step.Value });

    public static string TakeBackWord(StepId step) => Json(new { kind = "takeBackWord", step = step.Value });

    public static string Foil(StepId step, bool isOn) => Json(new { kind = "setFoil", step = step.Value, isOn });

    /// <summary>Where the room's temperature is typed beside the button, the script fills it in.</summary>
    public static string CoverRest(StepId step, RestUnder under, int room) => Json(new { kind = "coverRest", step = step.Value, under = JsonNamingPolicy.CamelCase.ConvertName(under.ToString()), room });

    public static string TakeBackFoil(StepId step) => Json(new { kind = "takeBackFoil", step = step.Value });

    public static string TakeBackCover(StepId step) => Json(new { kind = "takeBackCover", step = step.Value });

    public static string Acknowledge(CallId call) => Json(new { kind = "acknowledge", call = call.Value });

    public static string TakeBackTime(StepId step, int minutes) => Json(new { kind = "takeBackTime", step = step.Value, minutes });

    public static string TakeBackTend(StepId step, int tend, int turn) => Json(new { kind = "takeBackTend", step = step.Value, tend, turn });

    public static string TakeBackAnswer(CallId call) => Json(new { kind = "takeBackAnswer", call = call.Value });

    public static string TakeBackPlan { get; } = Json(new { kind = "takeBackPlan" });

    public static string Stays(HelperId helper) => Json(new { kind = "helperStays", helper = helper.Value });

    public static string BringBack(DishId dish) => Json(new { kind = "bringBackDish", dish = dish.Value });

    public static string TakeBackTable(CourseId course) => Json(new { kind = "takeBackTable", course = course.Value });

    public static string OnTime(OvenId oven) => Json(new { kind = "ovenOnTime", oven = oven.Value });

    /// <param name="minutes">Null = the host takes each plan.</param>
    public static string PlanRule(int? minutes) => Json(new { kind = "setPlanRule", minutes });

    public static string HoldEverything { get; } = Json(new { kind = "holdEverything" });

    public static string GoOn { get; } = Json(new { kind = "goOn" });

    public static string Accept(OfferedPlan offer) => Json(new { kind = "acceptPlan", plan = offer.Id });

    public static string PutOut(PersonId person) => Json(new { kind = "putOut", person = person.Value });

    public static string Leaves(HelperId helper, int minutes) => Json(new { kind = "helperLeaves", helper = helper.Value, minutes });

    /// <param name="dish">Of the library.</param>
    public static string Add(Guid dish, CourseId course) => Json(new { kind = "addDish", dish, course = course.Value });

    public static string Drop(DishId dish) => Json(new { kind = "dropDish", dish = dish.Value });

    public static string MoveTable(CourseId course, int minutes) => Json(new { kind = "moveTable", course = course.Value, minutes });

    public static string StillHeats(OvenId oven, int minutes) => Json(new { kind = "ovenStillHeats", oven = oven.Value, minutes });

    /// <summary>The script fills in what was typed beside the button, under the unit that was chosen there.</summary>
    public static string ReadOven(OvenId oven) => Json(new { kind = "readOven", oven = oven.Value });

    public static string TakeBackOvenReading(OvenId oven) => Json(new { kind = "takeBackOvenReading", oven = oven.Value });

    public static string EndRun { get; } = Json(new { kind = "endRun" });

    static string Json<T>(T command) => JsonSerializer.Serialize(command);
}
