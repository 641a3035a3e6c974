using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.Reading;
using static CookAlong.Intake.Reading.JsonWords;

namespace CookAlong.Intake.PlanFiles;

internal sealed class PlanWriting(Meal meal)
{
    public JsonObject Plan(Plan plan) => Object(
        ("format", PlanFile.Format),
        ("timeZone", meal.TimeZone.Id),
        ("notBefore", Time(plan.NotBefore)),
        ("status", PlanReading.Statuses.WordFor(plan.Status)),
        ("gap", plan.Gap),
        ("solveMilliseconds", plan.SolveMilliseconds),
        ("courses", List(plan.Courses.Select(course => Object(
            ("id", course.Course.Value),
            ("tableTime", Time(course.TableTime)),
            ("promised", Time(course.Promised)),
            ("lateMinutes", course.LateMinutes))))),
        ("steps", List(plan.Steps.Select(Step))),
        ("tends", List(plan.Tends.Select(tend => Object(
            ("step", tend.Step.Value),
            ("tend", tend.Tend),
            ("turn", tend.Turn),
            ("at", Time(tend.At)),
            ("minutes", tend.Minutes),
            ("helper", tend.Helper.Value))))),
        ("holds", List(plan.Holds.Select(hold => Object(
            ("dish", hold.Dish.Value),
            ("hold", hold.Hold),
            ("place", HoldReading.Places.WordFor(hold.Place)),
            ("from", Time(hold.From)),
            ("to", Time(hold.To)),
            ("oven", hold.Oven?.Value))))),
        ("ovenProgramme", List(plan.Ovens.Select(Programme))),
        ("cost", Object(
            ("lateMinutes", plan.Cost.LateMinutes),
            ("waiting", plan.Cost.Waiting),
            ("kitchenMinutes", plan.Cost.KitchenMinutes),
            ("ovenChanges", plan.Cost.OvenChanges),
            ("objective", plan.Cost.Objective),
            ("cushion", plan.Cost.Cushion),
            ("leans", Texts(LeanWords.Of(plan.Cost.Leans))))),
        ("confidence", plan.Confidence is { } confidence ? ConfidenceJson.Write(confidence) : null),
        ("conflicts", List(plan.Conflicts.Select(conflict => Object(
            ("sentence", ConflictWords.Sentence(conflict, meal)),
            ("change", ChangeJson.Write(conflict.Change, meal.TimeZone)),
            ("gainMinutes", conflict.GainMinutes))))));

    private JsonValue Time(Minute at) => JsonValue.Create(WallClock.Write(at, meal.TimeZone));

    private JsonObject Step(PlannedStep step) => Object(
        ("step", step.Step.Value),
        ("start", Time(step.Start)),
        ("end", Time(step.End)),
        ("option", step.Option),
        ("helpers", Texts(step.Helpers.Select(helper => helper.Value))),
        ("oven", step.Oven?.Value),
        ("grill", step.Grill?.Value),
        ("appliance", step.Appliances.IsEmpty ? null : step.Appliances[0].Value),
        ("appliances", step.Appliances.Length < 2 ? null : Texts(step.Appliances.Select(appliance => appliance.Value))),
        ("slackMinutes", step.Slack));

    private JsonObject Programme(OvenProgramme programme) => Object(
        ("oven", programme.Oven.Value),
        ("points", List(programme.Points.Select(point => Object(("at", Time(point.At)), ("celsius", point.Celsius))))),
        ("dial", List(programme.Dial.Select(dial => Object(
            ("at", Time(dial.At)),
            ("celsius", dial.Celsius),
            ("words", DialWords(programme.Oven, dial)))))));

    private string DialWords(OvenId id, DialSetting dial)
    {
        var name = meal.Kitchen.Ovens.FirstOrDefault(oven => oven.Id == id)?.Name ?? id.Value;
        return dial.Celsius == 0 ? $"Turn {name} off" : $"Set {name} to {dial.Celsius} °C";
    }
}
