namespace CookAlong.Intake.Recipes;

/// <summary>Which steps of a recipe go on at the same time: "meanwhile", "while the potatoes roast".</summary>
static class Overlaps
{
    static readonly string[][] meanwhile = [["meanwhile"], ["meantime"], ["in", "the", "meantime"], ["in", "the", "mean", "time"], ["at", "the", "same", "time"], ["during", "this", "time"], ["while", "you", "wait"], ["while", "this"], ["while", "that"], ["while", "it"], ["while", "they"]];

    /// <summary>Words that say nothing about which step is meant.</summary>
    static readonly string[] empty = ["the", "a", "an", "is", "are", "your", "their", "in", "on", "and", "of", "still", "all"];

    /// <summary>Words after "while" that are looked at.</summary>
    const int Clause = 6;

    /// <summary>Sets <see cref="StepDraft.Beside"/> of each step that says so at its beginning, and only where the other needs no hands all the time.</summary>
    public static void Mark(IReadOnlyList<StepDraft> steps)
    {
        for (var i = 1; i < steps.Count; i++)
        {
            steps[i].Beside = Of(Token.Read(steps[i].Read.Text), steps, i);
        }
    }

    static StepDraft? Of(List<Token> words, IReadOnlyList<StepDraft> steps, int at)
    {
        if (meanwhile.Any(phrase => phrase.Select((word, i) => i < words.Count && words[i].Is(word)).All(one => one)))
        {
            return LastWaiting(steps, at, _ => true);
        }

        if (words.Count == 0 || !words[0].Is("while"))
        {
            return null;
        }

        var named = words.Skip(1).Take(Clause).TakeWhile(word => !word.Is(",", ".", ";")).Where(word => !empty.Contains(word.Text)).ToList();
        return LastWaiting(steps, at, step => named.Any(word => Mentions(step, word.Text))) ?? LastWaiting(steps, at, _ => true);
    }

    static StepDraft? LastWaiting(IReadOnlyList<StepDraft> steps, int before, Func<StepDraft, bool> isMeant) =>
        steps.Take(before).LastOrDefault(step => step.Attention != Domain.Meals.Attention.HandsOn && isMeant(step));

    /// <summary>"roast" means "roasting" too.</summary>
    static bool Mentions(StepDraft step, string word)
    {
        var stem = word.Length > 4 && word.EndsWith('s') ? word[..^1] : word;
        return stem.Length > 2 && Token.Read(step.Read.Text).Any(one => one.Text.StartsWith(stem, StringComparison.Ordinal));
    }

    /// <summary>Which of these steps each must wait for, by place: one beside another waits for what that waits for, any other for all that nobody waits for yet.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> WaitsFor(IReadOnlyList<StepDraft> steps)
    {
        var waits = new List<IReadOnlyList<int>>();
        var last = new SortedSet<int>();
        for (var i = 0; i < steps.Count; i++)
        {
            var beside = steps[i].Beside is { } other ? steps.Take(i).ToList().IndexOf(other) : -1;
            waits.Add(beside >= 0 ? waits[beside] : [.. last]);
            if (beside < 0)
            {
                last.Clear();
            }

            last.Add(i);
        }

        return waits;
    }
}
