using System.Text.Json;
using System.Text.Json.Nodes;

namespace CookAlong.Web.Data.Archive;

/// <summary>An archive's rows, read from its entries' texts; whatever cannot be read is named.</summary>
sealed class ArchiveReading(Dictionary<string, string> entries, List<BadEntry> bad)
{
    const string Document = "document";

    /// <returns>Null when anything is bad.</returns>
    public HouseholdRows? Read()
    {
        if (!ReadManifest())
        {
            return null;
        }

        var rows = new HouseholdRows
        {
            Meals = Table<MealRow>("meals", row => ArchiveLayout.Meal(Id(row, "id"))),
            Plans = Table<PlanRow>("plans", row => ArchiveLayout.Plan(Id(row, "id"))),
            DishVersions = Table<DishVersionRow>("dishversions", row => ArchiveLayout.Dish(Id(row, "dish"), row["number"]!.GetValue<int>())),
            Dishes = Table<DishRow>("dishes"),
            Again = Table<AgainRow>("again"),
            Leftovers = Table<LeftoverRow>("leftovers"),
            ShoppingTaps = Table<ShoppingTapRow>("shoppingtaps"),
            Runs = Table<RunRow>("runs"),
            WrittenTimes = Table<WrittenTimeRow>("writtentimes"),
            DebriefNotes = Table<DebriefNoteRow>("debriefnotes"),
            ForgottenRuns = Table<ForgottenRunRow>("forgottenruns"),
            LearnedTimes = Table<LearnedTimeRow>("learnedtimes"),
            AgainTicks = LaterTable<AgainTickRow>("againticks"),
            OvenTrials = LaterTable<OvenTrialRow>("oventrials"),
            OvenFigures = LaterTable<OvenFigureRow>("ovenfigures"),
            DebriefPhotos = LaterTable<DebriefPhotoRow>("debriefphotos", row => ArchiveLayout.Photo(Id(row, "id"))),
            Settings = Table<SettingsRow>("settings"),
            RunEvents = [.. entries.Keys.Where(name => name.StartsWith("runs/", StringComparison.Ordinal)).SelectMany(Events)],
        };
        bad.AddRange(ArchiveChecks.Of(rows));
        return bad.Count == 0 ? rows : null;
    }

    bool ReadManifest()
    {
        var manifest = Parse<ArchiveManifest>(ArchiveLayout.Manifest);
        if (manifest is { Format: not ArchiveLayout.Format })
        {
            bad.Add(new(ArchiveLayout.Manifest, $"The format is \"{manifest.Format}\"; this version reads \"{ArchiveLayout.Format}\"."));
        }

        return bad.Count == 0;
    }

    List<T> Table<T>(string name, Func<JsonObject, string>? documentOf = null) => Rows<T>(ArchiveLayout.Table(name), row =>
    {
        if (documentOf is not null)
        {
            row[Document] = entries.TryGetValue(documentOf(row), out var text) ? text : throw new InvalidDataException($"its entry {documentOf(row)} is missing");
        }
    });

    /// <summary>One that the first archives of this format do not have.</summary>
    List<T> LaterTable<T>(string name, Func<JsonObject, string>? documentOf = null) => entries.ContainsKey(ArchiveLayout.Table(name)) ? Table<T>(name, documentOf) : [];

    List<RunEventRow> Events(string entry) => Rows<RunEventRow>(entry, row => row[Document] = row[Document]!.ToJsonString());

    List<T> Rows<T>(string entry, Action<JsonObject> complete)
    {
        List<T> rows = [];
        foreach (var (index, node) in (Parse<JsonArray>(entry) ?? []).Index())
        {
            try
            {
                var row = node!.AsObject();
                complete(row);
                rows.Add(row.Deserialize<T>(ArchiveLayout.Json)!);
            }
            catch (Exception failure) when (ArchiveChecks.IsOfBadInput(failure))
            {
                bad.Add(new(entry, $"Row {index + 1}: {failure.Message}"));
            }
        }

        return rows;
    }

    T? Parse<T>(string entry)
        where T : class
    {
        if (!entries.TryGetValue(entry, out var text))
        {
            bad.Add(new(entry, "It is missing."));
            return null;
        }

        try
        {
            return JsonSerializer.Deserialize<T>(text, ArchiveLayout.Json) ?? throw new JsonException("it is null");
        }
        catch (JsonException failure)
        {
            bad.Add(new(entry, $"It is not the JSON it should be: {failure.Message}"));
            return null;
        }
    }

    static Guid Id(JsonObject row, string name) => row[name]!.GetValue<Guid>();
}
