using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>Turns a meal into a plan. Implementations differ in how they search, never in what a plan must satisfy.</summary>
public interface IMealPlanner
{
    /// <summary>
    /// The best plan found before the limits run out or <paramref name="stop"/> is raised; stopping returns the best so far.
    /// A returned plan other than <see cref="PlanStatus.None"/> has passed <see cref="PlanCheck"/>.
    /// </summary>
    /// <param name="progress">Told of each better plan's cost and bound while the search goes on.</param>
    Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default);
}

/// <param name="Now">Nothing may start earlier, whatever the meal's <see cref="Meal.NotBefore"/> says; null when planning far ahead.</param>
/// <param name="So">What a run has made true already; null before the run.</param>
/// <param name="Previous">
/// The plan people last saw of this meal before it runs; the meal may have been changed since in any way. The search begins
/// there, and each minute moved, up to a quarter of an hour, and each person changed has a small price, so that a small change
/// to the meal moves few steps. No rule is softened. The returned <see cref="PlanCost.Objective"/> leaves that price out, so that it stays comparable to
/// the previous plan's; <see cref="Plan.Gap"/> and <see cref="PlanProgress.Objective"/> have it in. No meaning beside <paramref name="So"/>.
/// </param>
public sealed record PlanRequest(Meal Meal, PlanLimits Limits, Minute? Now = null, SoFar? So = null, Plan? Previous = null)
{
    /// <summary>Minutes of <see cref="Cushion"/> where nobody asks for more or less.</summary>
    public const int UsualCushion = 5;

    /// <summary>
    /// How long before the table each dish is wanted ready, as far as it keeps: a wish with a price, in minutes, 0 or more.
    /// <see cref="PlanCost.Objective"/> has that price in: only plans with the same cushion can be compared by it.
    /// </summary>
    public int Cushion { get; init; } = UsualCushion;

    /// <summary>Wishes too: <see cref="PlanCost.Objective"/> has their prices in.</summary>
    public Leans Leans { get; init; }
}

/// <param name="Time">
/// How long the search goes on for better plans once it has one. Without any plan it goes on to <see cref="WithoutPlan"/>, so
/// that a slow machine gets a plan too. What turns the best found into a plan with names may take a second or two more.
/// </param>
/// <param name="Workers">Threads of the search, 1 to 8.</param>
/// <param name="Seed">Same seed, one worker and a deterministic limit give the same plan.</param>
/// <param name="Deterministic">Search effort in the solver's own units instead of seconds; null = wall clock only.</param>
public sealed record PlanLimits(TimeSpan Time, int Workers = 2, int Seed = 1, double? Deterministic = null)
{
    /// <summary>Longest search while there is no plan at all; <see cref="Time"/> where that is longer. No meaning beside a deterministic limit.</summary>
    public TimeSpan WithoutPlan { get; init; } = TimeSpan.FromSeconds(20);
}

public readonly record struct PlanProgress(TimeSpan After, long Objective, double Gap, int LateMinutes)
{
    /// <summary>A whole plan that could be taken at once, told before the search for a better one goes on: while a meal runs each better one, before that the first and the one the solver begins from.</summary>
    public Plan? Plan { get; init; }
}

/// <summary>The running kitchen as a re-planner sees it.</summary>
/// <param name="Current">The plan people were told; a good re-plan moves as few promises as possible.</param>
/// <param name="Facts">Steps that have begun: fixed as they are.</param>
/// <param name="OvensNow">Oven temperatures at <see cref="PlanRequest.Now"/>.</param>
public sealed record SoFar(Plan Current, IReadOnlyList<StepFact> Facts, IReadOnlyDictionary<OvenId, int> OvensNow);

/// <param name="End">When it ended, or for a running step when it is now expected to.</param>
/// <param name="TendsDone">Tends of it that are done already: (tend, turn).</param>
public sealed record StepFact(StepId Step, Minute Start, Minute End, bool IsFinished, IReadOnlyList<(int Tend, int Turn)> TendsDone);
