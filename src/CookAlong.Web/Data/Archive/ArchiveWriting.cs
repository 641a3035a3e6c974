using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CookAlong.Web.Data.Archive;

/// <summary>Writes a household's archive.</summary>
static class ArchiveWriting
{
    const string Document = "document";

    public static async Task WriteAsync(Stream to, HouseholdRows rows, DateTimeOffset now, CancellationToken stop)
    {
        await using var zip = await ZipArchive.CreateAsync(to, ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: Encoding.UTF8, stop);
        await AddAsync(ArchiveLayout.Manifest, JsonSerializer.Serialize(new ArchiveManifest(ArchiveLayout.Format, now, Tables.Steps[^1], rows.Meals.Count, rows.Dishes.Count, rows.Runs.Count), ArchiveLayout.Json));
        await AddTableAsync("meals", rows.Meals, row => (ArchiveLayout.Meal(row.Id), row.Document));
        await AddTableAsync("plans", rows.Plans, row => (ArchiveLayout.Plan(row.Id), row.Document));
        await AddTableAsync("dishversions", rows.DishVersions, row => (ArchiveLayout.Dish(row.Dish, row.Number), row.Document));
        await AddTableAsync("dishes", rows.Dishes);
        await AddTableAsync("again", rows.Again);
        await AddTableAsync("leftovers", rows.Leftovers);
        await AddTableAsync("shoppingtaps", rows.ShoppingTaps);
        await AddTableAsync("runs", rows.Runs);
        await AddTableAsync("writtentimes", rows.WrittenTimes);
        await AddTableAsync("debriefnotes", rows.DebriefNotes);
        await AddTableAsync("forgottenruns", rows.ForgottenRuns);
        await AddTableAsync("learnedtimes", rows.LearnedTimes);
        await AddTableAsync("againticks", rows.AgainTicks);
        await AddTableAsync("oventrials", rows.OvenTrials);
        await AddTableAsync("ovenfigures", rows.OvenFigures);
        await AddTableAsync("debriefphotos", rows.DebriefPhotos, row => (ArchiveLayout.Photo(row.Id), Convert.ToBase64String(row.Image)));
        await AddTableAsync("settings", rows.Settings);
        foreach (var log in rows.RunEvents.GroupBy(row => row.Run))
        {
            await AddAsync(ArchiveLayout.Run(log.Key), new JsonArray([.. log.Select(Event)]).ToJsonString(ArchiveLayout.Json));
        }

        async Task AddTableAsync<T>(string name, IReadOnlyList<T> table, Func<T, (string Entry, string Text)>? documentOf = null)
        {
            JsonArray written = [];
            foreach (var row in table)
            {
                var json = Row(row);
                if (documentOf is not null)
                {
                    json.Remove(Document);
                    var (entry, text) = documentOf(row);
                    await AddAsync(entry, text);
                }

                written.Add((JsonNode)json);
            }

            await AddAsync(ArchiveLayout.Table(name), written.ToJsonString(ArchiveLayout.Json));
        }

        async Task AddAsync(string name, string text)
        {
            var entry = zip.CreateEntry(name);
            entry.LastWriteTime = now;
            await using var stream = await entry.OpenAsync(stop);
            await stream.WriteAsync(Encoding.UTF8.GetBytes(text), stop);
        }
    }

    /// <summary>The event's own JSON, not a text that holds it.</summary>
    static JsonNode Event(RunEventRow row)
    {
        var json = Row(row);
        json[Document] = JsonNode.Parse(row.Document);
        return json;
    }

    static JsonObject Row<T>(T row) => JsonSerializer.SerializeToNode(row, ArchiveLayout.Json)!.AsObject();
}
