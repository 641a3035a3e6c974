using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

// Dishes that are left out of a meal that is being cooked, and those that come back.
public sealed partial record Run
{
    /// <summary>Every dish that was ever to be cooked, whether or not it still is.</summary>
    public ImmutableArray<Dish> Menu { get; private init; } = [];

    /// <summary>What was planned and done for dishes that are left out, for when they come back.</summary>
    internal ImmutableDictionary<DishId, DishSoFar> LeftOut { get; private init; } = ImmutableDictionary<DishId, DishSoFar>.Empty;

    Decision Drop(DishId dish) =>
        Meal.Dishes.All(one => one.Id != dish) ? new Refusal.UnknownDish(dish)
        : !Meal.Dishes.Any(one => !one.Steps.IsEmpty && one.Id != dish) ? new Refusal.OnlyDish(dish)
        : new RunEvent.DishDropped(dish);

    Run WithDropped(DishId id)
    {
        var gone = Meal.Dishes.Single(dish => dish.Id == id).Steps.Select(step => step.Id).ToHashSet();
        var soFar = new DishSoFar(
            [.. Plan.Steps.Where(step => gone.Contains(step.Step))],
            [.. Plan.Tends.Where(tend => gone.Contains(tend.Step))],
            [.. Plan.Holds.Where(hold => hold.Dish == id)],
            [.. Steps.Where(entry => gone.Contains(entry.Key))],
            [.. TendsDone.Where(entry => gone.Contains(entry.Key.Step))]);
        return this with
        {
            LeftOut = LeftOut.SetItem(id, soFar),
            Meal = Meal with { Dishes = DishesWithout([.. LeftOut.Keys, id]) },
            Plan = Plan with
            {
                Steps = [.. Plan.Steps.Except(soFar.Steps)],
                Tends = [.. Plan.Tends.Except(soFar.Tends)],
                Holds = [.. Plan.Holds.Except(soFar.Holds)],
            },
            Taken = Taken is { } taken ? taken with { Changes = [.. taken.Changes.Where(change => !gone.Contains(change.Step))] } : null,
            TendsDone = TendsDone.RemoveRange(soFar.TendsDone.Select(entry => entry.Key)),
            Steps = Steps.RemoveRange(gone),
            Pause = Pause is { After: { } after } && gone.Contains(after) ? null : Pause,
        };
    }

    /// <summary>As it was when it was left out; the new plan that is then looked for makes room for it.</summary>
    Run WithBroughtBack(DishId id)
    {
        var soFar = LeftOut[id];
        var served = Plan.TableTime(Menu.Single(dish => dish.Id == id).Course);
        return this with
        {
            LeftOut = LeftOut.Remove(id),
            Meal = Meal with { Dishes = DishesWithout([.. LeftOut.Keys.Where(other => other != id)]) },
            Plan = Plan with
            {
                Steps = [.. Plan.Steps, .. soFar.Steps],
                Tends = [.. Plan.Tends, .. soFar.Tends],
                Holds = [.. Plan.Holds, .. soFar.Holds.Select(hold => hold with { To = served })],
            },
            TendsDone = TendsDone.AddRange(soFar.TendsDone),
            Steps = Steps.AddRange(soFar.States),
        };
    }

    ImmutableArray<Dish> DishesWithout(ImmutableHashSet<DishId> left)
    {
        var gone = Menu.Where(dish => left.Contains(dish.Id)).SelectMany(dish => dish.Steps).Select(step => step.Id).ToHashSet();
        Step Without(Step step) => step with { After = [.. step.After.Where(after => !gone.Contains(after.Step))] };
        return [.. Menu.Where(dish => !left.Contains(dish.Id)).Select(dish => dish with { Steps = [.. dish.Steps.Select(Without)] })];
    }
}

/// <summary>What was planned and done for one dish.</summary>
sealed record DishSoFar(
    ImmutableArray<PlannedStep> Steps,
    ImmutableArray<PlannedTend> Tends,
    ImmutableArray<PlannedHold> Holds,
    ImmutableArray<KeyValuePair<StepId, StepState>> States,
    ImmutableArray<KeyValuePair<TendTurn, DateTimeOffset>> TendsDone);
