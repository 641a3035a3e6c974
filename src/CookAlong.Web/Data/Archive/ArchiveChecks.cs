using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Intake;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.Photos;

namespace CookAlong.Web.Data.Archive;

/// <summary>Whether rows from outside are what this program itself would have written. Every file is read and every run played once.</summary>
static class ArchiveChecks
{
    /// <summary>What reading something broken throws: the log's reader trusts its own database, and here meets what came from elsewhere.</summary>
    public static bool IsOfBadInput(Exception failure) =>
        failure is InvalidDataException or JsonException or FormatException or InvalidOperationException or ArgumentException or NullReferenceException
            or KeyNotFoundException or OverflowException or IndexOutOfRangeException;

    public static IEnumerable<BadEntry> Of(HouseholdRows rows) =>
    [
        .. rows.Meals.SelectMany(row => Errors(ArchiveLayout.Meal(row.Id), () => MealFile.Read(row.Document).Errors)),
        .. rows.DishVersions.SelectMany(row => Errors(ArchiveLayout.Dish(row.Dish, row.Number), () => DishFile.Read(row.Document).Errors)),
        .. rows.Plans.SelectMany(row => Errors(ArchiveLayout.Plan(row.Id), () => NotJson(row.Document))),
        .. rows.ShoppingTaps.SelectMany(row => Errors(ArchiveLayout.Table("shoppingtaps"), () => NotJson(row.Document))),
        .. rows.LearnedTimes.Where(row => !(row.Least > 0 && row.Least <= row.Likely && row.Likely <= row.Most))
            .Select(row => new BadEntry(ArchiveLayout.Table("learnedtimes"), $"\"{row.Text}\" of {row.DishName}: least, likely and most are not in order.")),
        .. rows.OvenTrials.SelectMany(row => Errors(ArchiveLayout.Table("oventrials"), () => NotReadings(row))),
        .. rows.OvenFigures.Where(row => row.HeatUpPerMinute <= 0 || row.CoolDownPerMinute <= 0)
            .Select(row => new BadEntry(ArchiveLayout.Table("ovenfigures"), $"{row.Oven}: what it heats and cools a minute is more than nothing.")),
        .. rows.DebriefPhotos.Where(row => Photo.Of(row.Image) is not { } photo || photo.Kind != row.Kind)
            .Select(row => new BadEntry(ArchiveLayout.Photo(row.Id), "It is not the picture that the table says.")),
        .. rows.Settings.Where(row => row.Id != SettingsRow.TheOnly).Select(_ => new BadEntry(ArchiveLayout.Table("settings"), $"Its one row has the id {SettingsRow.TheOnly}.")),
        .. rows.RunEvents.Select(row => row.Run).Distinct().Except(rows.Runs.Select(run => run.Id)).Select(run => new BadEntry(ArchiveLayout.Run(run), "No run of this id is in the table of runs.")),
        .. rows.Dishes.ExceptBy(rows.DishVersions.Select(version => (version.Dish, version.Number)), row => (row.Id, row.Number))
            .Select(row => new BadEntry(ArchiveLayout.Dish(row.Id, row.Number), "The dish's version that holds now is missing.")),
        .. rows.Runs.Where(run => run.Ended is null).Select(run => new BadEntry(ArchiveLayout.Table("runs"), $"Run {run.Id} has not ended.")),
        .. rows.Runs.SelectMany(run => Played(run, rows.RunEvents)),
        .. Twice("meals", rows.Meals.Select(row => row.Id)),
        .. Twice("plans", rows.Plans.Select(row => row.Id)),
        .. Twice("dishes", rows.Dishes.Select(row => row.Id)),
        .. Twice("dishversions", rows.DishVersions.Select(row => (row.Dish, row.Number))),
        .. Twice("again", rows.Again.Select(row => row.Meal)),
        .. Twice("leftovers", rows.Leftovers.Select(row => (row.Meal, row.Dish))),
        .. Twice("shoppingtaps", rows.ShoppingTaps.Select(row => (row.Meal, row.Sequence))),
        .. Twice("shoppingtaps", rows.ShoppingTaps.Select(row => (row.Meal, row.Command))),
        .. Twice("runs", rows.Runs.Select(row => row.Id)),
        .. Twice("writtentimes", rows.WrittenTimes.Select(row => (row.Run, row.Step, row.Option))),
        .. Twice("debriefnotes", rows.DebriefNotes.Select(row => (row.Run, row.Dish))),
        .. Twice("forgottenruns", rows.ForgottenRuns.Select(row => row.Run)),
        .. Twice("learnedtimes", rows.LearnedTimes.Select(row => (row.Dish, row.Text))),
        .. Twice("againticks", rows.AgainTicks.Select(row => (row.Meal, row.Item))),
        .. Twice("oventrials", rows.OvenTrials.Select(row => row.Id)),
        .. Twice("ovenfigures", rows.OvenFigures.Select(row => row.Oven)),
        .. Twice("debriefphotos", rows.DebriefPhotos.Select(row => row.Id)),
        .. Twice("settings", rows.Settings.Select(row => row.Id)),
    ];

    static IEnumerable<BadEntry> Errors(string entry, Func<IEnumerable<FileError>> read)
    {
        try
        {
            return [.. read().Take(1).Select(error => new BadEntry(entry, $"{error.Place} {error.Problem} {error.Remedy}".TrimStart()))];
        }
        catch (Exception failure) when (IsOfBadInput(failure))
        {
            return [new BadEntry(entry, failure.Message)];
        }
    }

    /// <summary>A plan that does not fit its meal any more is no plan, here as everywhere; a text that is no JSON is a fault.</summary>
    static IEnumerable<FileError> NotJson(string document)
    {
        JsonDocument.Parse(document).Dispose();
        return [];
    }

    static IEnumerable<FileError> NotReadings(OvenTrialRow row)
    {
        _ = row.Trial();
        return [];
    }

    static IEnumerable<BadEntry> Played(RunRow row, IReadOnlyList<RunEventRow> all)
    {
        var run = Run.Empty(new RunId(row.Id));
        var sequence = 0L;
        foreach (var one in all.Where(one => one.Run == row.Id))
        {
            sequence++;
            try
            {
                var happened = StoredEvent.Read(one.Kind, one.Document, run.HasBegun ? run.Meal : null);
                run = one.Sequence == sequence
                    ? run.Apply(new Logged(one.Sequence, new CommandId(one.Command), one.By is { } by ? new PersonId(by) : null, DateTimeOffset.FromUnixTimeMilliseconds(one.At), happened))
                    : throw new InvalidDataException("its number is not the next");
            }
            catch (Exception failure) when (IsOfBadInput(failure))
            {
                return [new BadEntry(ArchiveLayout.Run(row.Id), $"Event {sequence} ({one.Kind}): {failure.Message}")];
            }
        }

        return run.HasBegun ? [] : [new BadEntry(ArchiveLayout.Run(row.Id), "Nothing of the run is there.")];
    }

    static IEnumerable<BadEntry> Twice<T>(string table, IEnumerable<T> keys) =>
        keys.GroupBy(key => key).Where(group => group.Count() > 1).Take(1).Select(group => new BadEntry(ArchiveLayout.Table(table), $"{group.Key} is there twice."));
}
