using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Live.Wording;

namespace CookAlong.Web.Features.Live.Log;

/// <summary>Who did what, when, as it is read and taken away.</summary>
public sealed class RunLog(EventLog log, LiveRuns runs)
{
    /// <summary>In the order in which it happened.</summary>
    public async Task<ImmutableArray<LogLine>> OfAsync(LiveView view, CancellationToken stop)
    {
        var lines = ImmutableArray.CreateBuilder<LogLine>();
        var names = new Dictionary<PersonId, string>();
        var words = view.Words;
        var run = Run.Empty(view.Run);
        var takeBacks = new TakeBacks((await runs.FindAsync(view.Run))!.Current, view.Person, view.Board.At);
        await foreach (var (row, logged) in log.ReadAsync(view.Run, stop))
        {
            var before = run;
            run = run.Apply(logged);
            if (logged.Event is RunEvent.RunStarted or RunEvent.DishAdded)
            {
                // What has been left out since is still spoken of.
                words = new Words(run.Meal with { Dishes = run.Menu }, view.Board.People);
            }

            if (logged.Event is RunEvent.PersonJoined joined)
            {
                names[joined.Person] = joined.Name;
            }

            // A host who only looks has tapped nothing; whoever tapped had joined before.
            var by = logged.By is { } person ? names.GetValueOrDefault(person) : null;
            lines.Add(new LogLine(logged, by, row.Kind, row.Document, Sentence(words, logged, by, before, run), TakesBack: null));
            takeBacks.Add(logged.Event);
        }

        return [.. lines.Zip(takeBacks.Taps(), (line, tap) => line with { TakesBack = tap })];
    }

    /// <summary>With what of the step's tending this shows to have been late or left out.</summary>
    static string Sentence(Words words, Logged logged, string? by, Run before, Run after)
    {
        var sentence = words.Of(logged.Event, by ?? "The kitchen");
        StepId? tended = logged.Event switch
        {
            RunEvent.TendFinished tend => tend.Step,
            RunEvent.StepFinished step => step.Step,
            _ => null,
        };
        var notes = tended is { } id ? after.TendNotesOf(id).Except(before.TendNotesOf(id)).Select(words.Of).ToList() : [];
        return notes.Count == 0 ? sentence : $"{sentence} ({string.Join("; ", notes)})";
    }
}

/// <param name="By">The name under which they had joined; null for what the kitchen did by itself.</param>
/// <param name="Kind">As stored, with its version: "stepStarted/1".</param>
/// <param name="Document">The event's fields as stored, JSON.</param>
/// <param name="Sentence">In the words of the page.</param>
/// <param name="TakesBack">The tap that takes it back; null where whoever looks cannot, or it is not in force any more.</param>
public sealed record LogLine(Logged Logged, string? By, string Kind, string Document, string Sentence, string? TakesBack);
