using System.Globalization;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Debrief;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Shared;
using CsvHelper;

namespace CookAlong.Web.Features.Debrief;

/// <summary>A debrief to take away: everything as JSON, the steps as a table.</summary>
static class DebriefExport
{
    public static string Json(DebriefView view)
    {
        var debrief = view.Debrief;
        string Dish(DishId id) => debrief.Meal.Dishes.Single(dish => dish.Id == id).Name;
        string Text(StepId id) => debrief.Meal.Step(id).Text;
        return new JsonObject
        {
            ["format"] = "cookalong-debrief/1",
            ["run"] = view.Live.Run.ToString(),
            ["meal"] = debrief.Meal.Name,
            ["rehearsalRate"] = view.Live.Rate,
            ["note"] = view.NoteOf(""),
            ["courses"] = new JsonArray([.. debrief.Courses.Select(course => new JsonObject
            {
                ["name"] = course.Name,
                ["promised"] = course.Promised.Utc.UtcDateTime,
                ["movedTo"] = course.MovedTo?.Utc.UtcDateTime,
                ["ready"] = course.Ready?.Utc.UtcDateTime,
                ["lateMinutes"] = course.LateMinutes,
            })]),
            ["steps"] = new JsonArray([.. debrief.Steps.Select(step => new JsonObject
            {
                ["step"] = step.Step.Value,
                ["text"] = Text(step.Step),
                ["dish"] = Dish(step.Dish),
                ["plannedStart"] = step.PlannedStart.Utc.UtcDateTime,
                ["plannedEnd"] = step.PlannedEnd.Utc.UtcDateTime,
                ["started"] = step.Started?.UtcDateTime,
                ["finished"] = step.Finished?.UtcDateTime,
                ["wasStartSaid"] = step.WasStartSaid,
                ["wasLeftOut"] = step.WasLeftOut,
                ["helpers"] = new JsonArray([.. step.Helpers.Select(helper => (JsonNode)Name(view, helper))]),
            })]),
            ["slips"] = new JsonArray([.. debrief.Slips.Select(slip => new JsonObject
            {
                ["step"] = slip.Step.Value,
                ["beganLateMinutes"] = slip.BeganLate,
                ["tookLongerMinutes"] = slip.TookLonger,
                ["from"] = slip.From.UtcDateTime,
                ["noticed"] = slip.Noticed?.At.UtcDateTime,
                ["tableMinutes"] = slip.TableMinutes,
                ["absorbed"] = new JsonArray([.. slip.Absorbed.Select(one => new JsonObject { ["beforeStep"] = one.Before?.Value, ["beforeCourse"] = one.Table?.Value, ["minutes"] = one.Minutes })]),
            })]),
            ["byNewPlansMinutes"] = debrief.ByNewPlans,
            ["waits"] = new JsonArray([.. debrief.Waits.Select(wait => new JsonObject { ["dish"] = Dish(wait.Dish), ["minutes"] = wait.Minutes, ["bestWithin"] = wait.BestWithin, ["goodFor"] = wait.GoodFor })]),
            ["standing"] = new JsonArray([.. debrief.Standing.Select(one => new JsonObject { ["dish"] = Dish(one.Dish), ["outMinutes"] = (int)one.Out.TotalMinutes, ["unknownMinutes"] = (int)one.Unknown.TotalMinutes, ["mostMinutes"] = (int)one.Limit.Most.TotalMinutes, ["source"] = RegionWords.Of(one.Limit.Source) })]),
            ["calls"] = new JsonArray([.. debrief.Calls.Select(call => new JsonObject
            {
                ["kind"] = call.Kind.ToString().ToLowerInvariant(),
                ["step"] = call.Step.Value,
                ["tend"] = call.Tend,
                ["due"] = call.Due.UtcDateTime,
                ["lateMinutes"] = call.LateMinutes,
                ["isMissed"] = call.IsMissed,
            })]),
            ["people"] = new JsonArray([.. debrief.Shares.Select(share => new JsonObject
            {
                ["name"] = share.Name,
                ["isChild"] = share.IsChild,
                ["steps"] = share.Steps,
                ["plannedMinutes"] = share.PlannedMinutes,
                ["minutes"] = share.Minutes,
                ["hereMinutes"] = share.HereMinutes,
                ["fairMinutes"] = share.FairMinutes,
            })]),
            ["dishes"] = new JsonArray([.. debrief.Meal.Dishes.Select(dish => new JsonObject { ["name"] = dish.Name, ["verdict"] = view.VerdictOf(dish.Id.Value), ["note"] = view.NoteOf(dish.Id.Value) })]),
        }.ToJsonString(new() { WriteIndented = true });
    }

    public static byte[] Csv(DebriefView view)
    {
        var (meal, zone) = (view.Debrief.Meal, view.Debrief.Meal.TimeZone);
        var slips = view.Debrief.Slips.ToDictionary(slip => slip.Step);
        string At(DateTimeOffset? at) => at is { } known ? TimeZoneInfo.ConvertTime(known, zone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) : "";
        using var bytes = new MemoryStream();
        using (var writer = new StreamWriter(bytes, new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: true)))
        using (var csv = new CsvWriter(writer, SafeCsv.Table))
        {
            csv.WriteRecords(view.Debrief.Steps.Select(step => new
            {
                Dish = meal.Dishes.Single(dish => dish.Id == step.Dish).Name,
                Step = meal.Step(step.Step).Text,
                PlannedStart = At(step.PlannedStart.Utc),
                PlannedEnd = At(step.PlannedEnd.Utc),
                Started = At(step.Started),
                Finished = At(step.Finished),
                Who = string.Join(", ", step.Helpers.Select(helper => Name(view, helper))),
                SlippedMinutes = slips.GetValueOrDefault(step.Step)?.Minutes ?? 0,
                TableMinutes = slips.GetValueOrDefault(step.Step)?.TableMinutes ?? 0,
                Verdict = view.VerdictOf(step.Dish.Value),
                Note = view.NoteOf(step.Dish.Value),
                Rehearsal = view.IsRehearsal,
            }));
        }

        return bytes.ToArray();
    }

    static string Name(DebriefView view, HelperId helper) => view.Debrief.Shares.FirstOrDefault(share => share.Helper == helper)?.Name ?? helper.Value;
}
