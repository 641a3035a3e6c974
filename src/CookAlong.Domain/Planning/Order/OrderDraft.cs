using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning.Order;

/// <summary>The entries of a plan with their positions by id, for those who find the links between them.</summary>
sealed class OrderDraft
{
    readonly Dictionary<StepId, int> steps = [];
    readonly Dictionary<DishId, int> warmHolds = [];
    readonly Dictionary<CourseId, int> tables = [];

    public OrderDraft(Meal meal, Plan plan, ImmutableArray<Entry> entries)
    {
        (Meal, Plan, Entries) = (meal, plan, entries);
        foreach (var (at, entry) in entries.Index())
        {
            switch (entry.Kind)
            {
                case EntryKind.Step:
                    steps.TryAdd(entry.Step!.Step, at);
                    break;
                case EntryKind.WarmHold:
                    warmHolds.TryAdd(entry.Hold!.Dish, at);
                    break;
                case EntryKind.Table:
                    tables.TryAdd(entry.Course!.Course, at);
                    break;
                case EntryKind.Tend:
                    break;
                default:
                    throw new System.Diagnostics.UnreachableException();
            }
        }
    }

    public Meal Meal { get; }

    public Plan Plan { get; }

    public ImmutableArray<Entry> Entries { get; }

    public int? Step(StepId id) => steps.TryGetValue(id, out var at) ? at : null;

    public int? WarmHold(DishId id) => warmHolds.TryGetValue(id, out var at) ? at : null;

    public int? Table(CourseId id) => tables.TryGetValue(id, out var at) ? at : null;

    /// <summary>Positions of a dish's steps.</summary>
    public IEnumerable<int> StepsOf(Dish dish) => dish.Steps.Select(step => Step(step.Id)).OfType<int>();
}
