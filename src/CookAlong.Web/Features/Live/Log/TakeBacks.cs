using System.Globalization;
using System.Text.Json;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;

namespace CookAlong.Web.Features.Live.Log;

/// <summary>Which lines of a log can still be taken back, and by what tap.</summary>
/// <param name="run">As it is now.</param>
/// <param name="who">Who looks; nothing is offered that would be refused them.</param>
sealed class TakeBacks(Run run, PersonId who, DateTimeOffset now)
{
    readonly Dictionary<string, Stack<int>> standing = [];
    readonly List<string?> taps = [];
    int? rule;

    /// <summary>Told of every event in order.</summary>
    public void Add(RunEvent happened)
    {
        var (key, tap, isTakenBack) = Of(happened);
        var lines = key is null ? null : standing.TryGetValue(key, out var known) ? known : standing[key] = [];
        if (isTakenBack)
        {
            lines!.TryPop(out _);
        }
        else
        {
            lines?.Push(taps.Count);
        }

        if (happened is RunEvent.PlanRuleSet set)
        {
            rule = set.Minutes;
        }

        taps.Add(tap);
    }

    /// <summary>For each line the tap that takes it back; null for most. Of several of a kind only the last can be.</summary>
    public IReadOnlyList<string?> Taps()
    {
        var last = standing.Values.Where(lines => lines.Count > 0).Select(lines => lines.Peek()).ToHashSet();
        return [.. taps.Select((tap, line) => tap is not null && last.Contains(line) && IsPossible(tap) ? tap : null)];
    }

    bool IsPossible(string tap)
    {
        using var json = JsonDocument.Parse(tap);
        var command = WireCommand.Read(json.RootElement, _ => null) ?? throw new InvalidOperationException($"No screen could send {tap}.");
        return run.Decide(new Tap(default, who, command), now) is Decision.Accepted { Events.IsEmpty: false };
    }

    (string? Key, string? Tap, bool IsTakenBack) Of(RunEvent happened) => happened switch
    {
        RunEvent.StepStarted e => ($"step {e.Step}", Line.Taps.TakeBack(e.Step), false),
        RunEvent.StepFinished e => ($"step {e.Step}", Line.Taps.TakeBack(e.Step), false),
        RunEvent.StepTakenBack e => ($"step {e.Step}", null, true),
        RunEvent.TimeAdded e => (Time(e.Step.Value, e.Minutes), Line.Taps.TakeBackTime(e.Step, e.Minutes), false),
        RunEvent.TimeTakenBack e => (Time(e.Step.Value, e.Minutes), null, true),
        RunEvent.TendFinished e => (Tend(e.Step.Value, e.Tend, e.Turn), Line.Taps.TakeBackTend(e.Step, e.Tend, e.Turn), false),
        RunEvent.TendTakenBack e => (Tend(e.Step.Value, e.Tend, e.Turn), null, true),
        RunEvent.CoreRead e => ($"core {e.Step}", Line.Taps.TakeBackReading(e.Step), false),
        RunEvent.CoreTakenBack e => ($"core {e.Step}", null, true),
        RunEvent.CoreVouched e => ($"word {e.Step}", Line.Taps.TakeBackWord(e.Step), false),
        RunEvent.CoreWordTakenBack e => ($"word {e.Step}", null, true),
        RunEvent.CallAcknowledged e => ($"call {e.Call}", Line.Taps.TakeBackAnswer(e.Call), false),
        RunEvent.CallTakenBack e => ($"call {e.Call}", null, true),
        RunEvent.PlanAccepted => ("plan", Line.Taps.TakeBackPlan, false),
        RunEvent.PlanTakenBack => ("plan", null, true),
        RunEvent.HelperLeft e => ($"helper {e.Helper}", Line.Taps.Stays(e.Helper), false),
        RunEvent.HelperStayed e => ($"helper {e.Helper}", null, true),
        RunEvent.DishAdded e => ($"added {e.Dish.Id}", Line.Taps.Drop(e.Dish.Id), false),
        RunEvent.DishDropped e => ($"dish {e.Dish}", Line.Taps.BringBack(e.Dish), false),
        RunEvent.DishBroughtBack e => ($"dish {e.Dish}", null, true),
        RunEvent.TableMoved e => ($"table {e.Course}", Line.Taps.TakeBackTable(e.Course), false),
        RunEvent.TableMovedBack e => ($"table {e.Course}", null, true),
        RunEvent.OvenBehind e => ($"oven {e.Oven}", Line.Taps.OnTime(e.Oven), false),
        RunEvent.OvenCaughtUp e => ($"oven {e.Oven}", null, true),
        RunEvent.OvenRead e => ($"in oven {e.Oven}", Line.Taps.TakeBackOvenReading(e.Oven), false),
        RunEvent.OvenReadTakenBack e => ($"in oven {e.Oven}", null, true),
        RunEvent.StepClaimed e => ($"claim {e.Step} {e.Helper}", Line.Taps.LetGo(e.Step), false),
        RunEvent.StepLetGo e => ($"claim {e.Step} {e.Helper}", null, true),

        RunEvent.StepGiven e => ($"giving {e.Step}", Line.Taps.TakeBackGiving(e.Step), false),
        RunEvent.StepHandedOver e => ($"giving {e.Step}", Line.Taps.TakeBackGiving(e.Step), false),
        RunEvent.GivingTakenBack e => ($"giving {e.Step}", null, true),
        RunEvent.FoilSet e => ($"foil {e.Step}", Line.Taps.TakeBackFoil(e.Step), false),
        RunEvent.FoilTakenBack e => ($"foil {e.Step}", null, true),
        RunEvent.RestCovered e => ($"cover {e.Step}", Line.Taps.TakeBackCover(e.Step), false),
        RunEvent.CoverTakenBack e => ($"cover {e.Step}", null, true),

        // Nothing is forgotten by choosing anew: the rule before is chosen again.
        RunEvent.PlanRuleSet => ("rule", Line.Taps.PlanRule(rule), false),

        // A pause, who came and who is on it: the board itself has the way back.
        _ => (null, null, false),
    };

    static string Time(string step, int minutes) => string.Create(CultureInfo.InvariantCulture, $"time {step} {minutes}");

    static string Tend(string step, int tend, int turn) => string.Create(CultureInfo.InvariantCulture, $"tend {step} {tend} {turn}");
}
