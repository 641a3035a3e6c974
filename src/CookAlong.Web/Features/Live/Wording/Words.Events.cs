using System.Diagnostics;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Live.Wording;

// The log of a run, as sentences: "Ivo began “Peel the potatoes”".
public sealed partial class Words
{
    /// <param name="by">Whose tap it was; null for what the kitchen did by itself.</param>
    public string Of(RunEvent happened, string? by) => happened switch
    {
        RunEvent.RunStarted => "The meal began",
        RunEvent.AuthoritySet one => $"Limits are those of {RegionWords.Of(one.Region)}",
        RunEvent.PersonJoined one => $"{one.Name} came in{(one.Role == Role.Watcher ? " to watch" : "")}",
        RunEvent.PersonPutOut => $"{by} put somebody out",
        RunEvent.StepStarted one => $"{by} began {Step(one.Step)}",
        RunEvent.StepFinished one => $"{by} finished {Step(one.Step)}",
        RunEvent.StepTakenBack one => $"{by} took back {Step(one.Step)}",
        RunEvent.StepClaimed one => $"{Name(one.Helper)} took {Step(one.Step)}",
        RunEvent.StepLetGo one => $"{Name(one.Helper)} let go of {Step(one.Step)}",
        RunEvent.StepGiven one => $"{by} gave {Step(one.Step)} to {Name(one.To)}",
        RunEvent.StepHandedOver one => $"{Name(one.From)} handed {Step(one.Step)} to {Name(one.To)}",
        RunEvent.GivingTakenBack one => $"{by} took back that {Step(one.Step)} was given away",
        RunEvent.ClaimKept one => $"{Name(one.Helper)} is on {Step(one.Step)}: theirs until {clock.Show(one.Until)}",
        RunEvent.ClaimFreed one => $"{Step(one.Step)} is free to take: {Name(one.Helper)} had not begun it",
        RunEvent.TimeAdded one => $"{by} gave {Step(one.Step)} {Minutes(one.Minutes)} more",
        RunEvent.TimeTakenBack one => $"{by} took back {Minutes(one.Minutes)} of {Step(one.Step)}",
        RunEvent.TendFinished one => $"{by} did “{meal.Step(one.Step).Tends[one.Tend].Text}” for {Step(one.Step)}",
        RunEvent.TendTakenBack one => $"{by} took back “{meal.Step(one.Step).Tends[one.Tend].Text}” for {Step(one.Step)}",
        RunEvent.CoreRead one => $"{by} read {Degrees(one.Celsius)} in {Step(one.Step)}: {Of(one.Word, one.Celsius)}",
        RunEvent.CoreTakenBack one => $"{by} took back the last reading of {Step(one.Step)}",
        RunEvent.CoreVouched one => $"{by} vouched for {Step(one.Step)} by another check: {one.Check}",
        RunEvent.CoreWordTakenBack one => $"{by} took back the word on {Step(one.Step)}",
        RunEvent.FoilSet one => one.IsOn ? $"{by} laid foil over {Step(one.Step)}" : $"{by} took the foil off {Step(one.Step)}",
        RunEvent.FoilTakenBack one => $"{by} took back the foil of {Step(one.Step)}",
        RunEvent.RestCovered one => $"{by} said that {Step(one.Step)} rests {Under(one.Under)}, in a kitchen of {one.RoomCelsius} °C",
        RunEvent.CoverTakenBack one => $"{by} took back what lies over {Step(one.Step)}, in a kitchen of {one.RoomCelsius} °C",
        RunEvent.CallAcknowledged one => $"{by} answered a call{About(one.Call)}",
        RunEvent.CallTakenBack one => $"{by} took back the answer to a call{About(one.Call)}",
        RunEvent.KitchenPaused { After: { } after } => $"Pause after {Step(after)}",
        RunEvent.KitchenPaused => $"{by} held everything",
        RunEvent.KitchenWentOn => $"{by} let the kitchen go on",
        RunEvent.PlanAccepted => $"{by} took a new plan",
        RunEvent.PlanTakenBack => $"{by} took back the new plan",
        RunEvent.PlanRuleSet one => $"{by} chose: {Rule(one.Minutes)}",
        RunEvent.HelperLeft one => $"{by} said that {Name(one.Helper)} is here until {clock.Show(one.From)}",
        RunEvent.HelperStayed one => $"{by} said that {Name(one.Helper)} stays",
        RunEvent.DishAdded one => $"{by} added {one.Dish.Name}",
        RunEvent.DishDropped one => $"{by} left out {DishName(one.Dish)}",
        RunEvent.DishBroughtBack one => $"{by} brought back {DishName(one.Dish)}",
        RunEvent.TableMoved one => $"{by} moved {meal.Courses.Single(course => course.Id == one.Course).Name} to {clock.Show(one.To)}",
        RunEvent.TableMovedBack one => $"{by} moved {meal.Courses.Single(course => course.Id == one.Course).Name} back to {clock.Show(one.To)}",
        RunEvent.OvenBehind one => $"{by} said that {OvenName(one.Oven)} is hot only at {clock.Show(one.HotAt)}",
        RunEvent.OvenCaughtUp one => $"{by} said that {OvenName(one.Oven)} heats as planned",
        RunEvent.OvenRead one => $"{by} read {Degrees(one.Reading.Celsius)} in {OvenName(one.Oven)}{(one.Reading.Dial == 0 ? "" : $", whose dial stands at {one.Reading.Dial} °C")}",
        RunEvent.OvenReadTakenBack one => $"{by} took back the last reading in {OvenName(one.Oven)}",
        RunEvent.RunEnded => $"{by} ended the meal",
        _ => throw new UnreachableException($"An event without a sentence: {happened.GetType().Name}."),
    };

    string OvenName(OvenId id) => meal.Kitchen.Ovens.Single(oven => oven.Id == id).Name;

    string DishName(DishId id) => meal.Dishes.FirstOrDefault(dish => dish.Id == id)?.Name ?? "a dish";

    string About(CallId call) =>
        meal.Steps.FirstOrDefault(step => CallIds.IsAbout(call, step.Id)) is { } step ? $" about {Step(step.Id)}" : "";
}
