using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

/// <summary>Where things stand in the room. A plan only counts places, and a new one would number them anew.</summary>
public sealed partial record Run
{
    /// <summary>Of what was on the heat when a new plan was taken: a pan stays on its ring.</summary>
    ImmutableDictionary<StepId, ImmutableArray<int>> RingsKept { get; init; } = ImmutableDictionary<StepId, ImmutableArray<int>>.Empty;

    /// <summary>The same for trays and shelves.</summary>
    ImmutableDictionary<StepId, ImmutableArray<int>> ShelvesKept { get; init; } = ImmutableDictionary<StepId, ImmutableArray<int>>.Empty;

    /// <summary>Null while the plan's own numbers hold.</summary>
    internal ImmutableArray<int>? RingsWhereItStands(StepId step) => WhereItStands(RingsKept, step);

    internal ImmutableArray<int>? ShelvesWhereItStands(StepId step) => WhereItStands(ShelvesKept, step);

    ImmutableArray<int>? WhereItStands(ImmutableDictionary<StepId, ImmutableArray<int>> kept, StepId step) =>
        StateOf(step).IsRunning && kept.TryGetValue(step, out var places) ? places : null;

    Run WithPlacesKept() => this with
    {
        RingsKept = BoardPlaces.RingsOf(this).Where(entry => StateOf(entry.Key).IsRunning).ToImmutableDictionary(),
        ShelvesKept = Meal.Kitchen.Ovens.SelectMany(oven => BoardPlaces.ShelvesOf(this, oven))
            .Where(entry => entry.Key.Step is { } step && StateOf(step).IsRunning)
            .ToImmutableDictionary(entry => entry.Key.Step!.Value, entry => entry.Value),
    };
}
