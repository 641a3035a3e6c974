using CookAlong.Domain;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner;

/// <summary>
/// Improves an answer that is far from proof by letting a few steps move at a time, all others staying where they are: those of
/// one span of the clock, or of a few dishes. Large-neighbourhood search; for single cooks and large meals, where proof is out of reach.
/// </summary>
internal sealed class Neighbourhoods(Search search, Func<Near, MealModel> model)
{
    /// <summary>Nearer to proof than this, the solver alone does better.</summary>
    private const double FarFromProof = 0.06;

    /// <summary>Of the whole search's deterministic limit, what one neighbourhood may take.</summary>
    private const double Share = 0.01;

    private const int Fewest = 10;

    /// <summary>Rounds without a better answer after which the rest of the time is better spent on the whole.</summary>
    private const int MostInVain = 30;

    private static readonly TimeSpan Each = TimeSpan.FromMilliseconds(250);

    /// <summary>Kept free for names and writing down.</summary>
    private static readonly TimeSpan Reserve = TimeSpan.FromMilliseconds(150);

    private readonly Random random = new(search.Limits.Seed);

    /// <summary>Until nothing moves any more, or the time is up.</summary>
    /// <param name="share">Of a deterministic limit.</param>
    public Answer Improve(MealModel whole, Answer answer, double share)
    {
        var (size, rounds, inVain) = (25, search.Limits.Deterministic is null ? int.MaxValue : (int)(share / Share / 4), 0);
        for (var round = 0; round < rounds && inVain < MostInVain && answer.Found is { } draft && IsFarFromProof(answer) && HasTime(); round++)
        {
            var starts = draft.Steps.ToDictionary(step => step.Key, step => step.Value.Start);
            var part = model(new Near(starts, 0, Free(whole.Meal, draft, size, round)));
            Hints.All(part, draft.Values);
            var time = search.Limits.Deterministic is not null ? search.Limits.Time : search.Left - Reserve < Each ? search.Left - Reserve : Each;
            var tried = search.Solve(part, time, time, Share);
            var isBetter = tried.Found is not null && tried.Objective < answer.Objective;
            answer = isBetter ? answer with { Found = tried.Found, Objective = tried.Objective } : answer;
            inVain = isBetter ? 0 : inVain + 1;

            // What is solved to the end could have been larger.
            var isSolved = tried.Found is not null && tried.Objective == tried.Bound;
            size = Math.Clamp(isSolved ? size + 2 : size - 2, Math.Min(Fewest, draft.Steps.Count), draft.Steps.Count);
        }

        return answer;
    }

    private bool HasTime() => !search.IsStopped && (search.Limits.Deterministic is not null || search.Left > Reserve);

    public static bool IsFarFromProof(Answer answer) => Answer.GapOf(answer.Objective, answer.Bound) > FarFromProof;

    private HashSet<StepId> Free(Meal meal, Draft draft, int size, int round)
    {
        if (round % 3 == 2)
        {
            var dishes = meal.Dishes.OrderBy(_ => random.Next()).ToList();
            return [.. dishes.SelectMany(dish => dish.Steps).Take(size).Select(step => step.Id)];
        }

        var steps = meal.Steps.Select(step => step.Id).ToList();
        var middle = draft.Steps[steps[random.Next(steps.Count)]].Start;
        return [.. steps.OrderBy(step => Math.Abs(draft.Steps[step].Start - middle)).Take(size)];
    }
}
