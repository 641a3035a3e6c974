using System.Text.Json.Nodes;
using CookAlong.Domain.Meals;

namespace CookAlong.Intake.MealFiles;

public sealed partial class DishDocument
{
    /// <summary>Other ways of a step.</summary>
    public const int MostOptions = 10;

    private JsonArray Steps => root["steps"]!.AsArray();

    private static string IdOf(JsonNode? step) => DishFile.TextOf(step!["id"])!;

    /// <summary>True where a step says nothing of what it waits for, and so waits for the one before it.</summary>
    public bool FollowsOrder(int step) => !Steps[step]!.AsObject().ContainsKey("after");

    /// <summary>The step waits for the one before it again.</summary>
    public void FollowOrder(int step) => Steps[step]!.AsObject().Remove("after");

    /// <summary>The step waits for these and no others; for none it may begin whenever it suits.</summary>
    public void WaitFor(int step, IReadOnlyList<After> links) => Steps[step]!["after"] = new JsonArray([.. links.Select(MealWriting.After)]);

    /// <summary>Adds a step at the end.</summary>
    public void AddStep(string text, int minutes) => InsertStep(Steps.Count, text, minutes);

    /// <summary>Puts a new step before the one at <paramref name="at"/>, which follows it unless it says what it waits for.</summary>
    public void InsertStep(int at, string text, int minutes)
    {
        var taken = Steps.Select(IdOf).ToHashSet(StringComparer.Ordinal);
        var id = Enumerable.Range(Steps.Count + 1, taken.Count + 1).Select(number => $"step-{number}").First(one => !taken.Contains(one));
        Steps.Insert(at, new JsonObject { ["id"] = id, ["text"] = text, ["minutes"] = minutes });
    }

    /// <summary>What waited for it follows the order again, where it waited for nothing else.</summary>
    public void RemoveStep(int index)
    {
        var id = IdOf(Steps[index]);
        Steps.RemoveAt(index);
        foreach (var step in Steps)
        {
            LetGo(step!.AsObject(), other => other == id);
        }
    }

    /// <summary>
    /// Puts a step elsewhere in the order. A link from a step to one that has just come to stand behind it is let go, or
    /// the two would wait for each other.
    /// </summary>
    /// <returns>Headlines of the steps that wait for less than before.</returns>
    public IReadOnlyList<string> MoveStep(int from, int to)
    {
        var before = Places();
        var step = Steps[from];
        Steps.RemoveAt(from);
        Steps.Insert(to, step);
        var now = Places();
        List<string> freed = [];
        foreach (var one in Steps.Select(one => one!.AsObject()))
        {
            var id = IdOf(one);
            if (LetGo(one, other => before[other] < before[id] && now[other] > now[id]))
            {
                freed.Add(DishFile.TextOf(one["text"])!);
            }
        }

        return freed;
    }

    /// <summary>Takes an entry out of a step's "tend".</summary>
    public void RemoveTend(int step, int index) => RemoveOf(step, "tend", index);

    /// <summary>Takes an entry out of a step's "options". Where that way was chosen, the choice is open again.</summary>
    public void RemoveOption(int step, int index)
    {
        RemoveOf(step, "options", index);
        var written = Steps[step]!.AsObject();
        switch (written["choice"]?.GetValue<int>())
        {
            case { } choice when choice == index:
                written.Remove("choice");
                break;
            case { } choice when choice > index:
                written["choice"] = choice - 1;
                break;
        }
    }

    private void RemoveOf(int step, string list, int index)
    {
        var entries = Steps[step]![list]!.AsArray();
        entries.RemoveAt(index);
        if (entries.Count == 0)
        {
            Steps[step]!.AsObject().Remove(list);
        }
    }

    private Dictionary<string, int> Places() => Steps.Select(IdOf).Index().ToDictionary(one => one.Item, one => one.Index, StringComparer.Ordinal);

    private static bool LetGo(JsonObject step, Func<string, bool> isGone)
    {
        var gone = DishFile.Entries(step, "after").Where(link => isGone(DishFile.TextOf(link["step"])!)).ToList();
        foreach (var link in gone)
        {
            step["after"]!.AsArray().Remove(link);
        }

        if (gone.Count > 0 && step["after"]!.AsArray().Count == 0)
        {
            step.Remove("after");
        }

        return gone.Count > 0;
    }
}
