using System.Collections.Immutable;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

/// <summary>Makes the cards of one board.</summary>
sealed class Cards(Run run, DateTimeOffset now, Expectation expected, ImmutableArray<Call> calls)
{
    public BoardCard Of(StepId step) => Of(run.Meal.Step(step));

    public BoardCard Of(Step step)
    {
        var helpers = run.HoldersOf(step.Id);
        return new BoardCard(
            step,
            run.Meal.DishOf(step.Id),
            StateOf(step),
            expected.Starts(step.Id),
            expected.Ends(step.Id),
            run.WayOf(step).Attention,
            helpers,
            run.IsFree(step),
            PlaceOf(step),
            Tend: null,
            CallFor(step))
        {
            HeldUntil = run.HeldUntil(step, expected, now),
            IsClaimed = run.IsClaimed(step.Id),
            ExtraMinutes = run.StateOf(step.Id).ExtraMinutes,
            TendNotes = Tending.Notes(run, step),
            Core = CoreOf(step),
        };
    }

    /// <summary>The tends of a running step that are still to be done, each as a card of its own.</summary>
    public IEnumerable<BoardCard> TendsOf(Step step) => Tending.Left(run, step).Select(left =>
    {
        var tend = step.Tends[left.Turn.Tend];
        var due = expected.Starts(step.Id).AddMinutes(left.Minutes);
        ImmutableArray<HelperId> helpers = left.Helper is { } helper ? [helper] : [];
        return Of(step) with
        {
            State = due <= now ? CardState.Due : CardState.Waiting,
            Starts = due,
            Ends = due.AddMinutes(tend.Minutes),
            Attention = Attention.HandsOn,
            Helpers = helpers,
            IsFree = helpers.All(one => run.PersonOf(one) is null),
            HeldUntil = null,
            TendNotes = [],
            Core = null,
            Tend = new CardTend(left.Turn.Tend, left.Turn.Turn, tend.Text, tend.Minutes),
            Call = calls.FirstOrDefault(call => call.Id == CallIds.Tend(left.Turn, run.StateOf(step.Id)) && call.Due <= now && !call.IsAcknowledged),
        };
    });

    CardState StateOf(Step step) => run.StateOf(step.Id) switch
    {
        { Finished: not null } => CardState.Done,
        { Started: not null } => expected.Ends(step.Id) < now ? CardState.Over : CardState.Running,
        _ => expected.Starts(step.Id) <= now && expected.IsReady(step) ? CardState.Due : CardState.Waiting,
    };

    CardCore? CoreOf(Step step) => run.CoreStepOf(step) is { Core: { } wanted } core && run.StateOf(core.Id) is var state
        ? new CardCore(core.Id, wanted, state.Readings, state.Vouched, (int)Math.Max(0, (run.WantedAt(core, expected) - expected.Ends(core.Id)).TotalMinutes)) { Foil = state.IsUnderFoil ? state.Foil[^1] : null }
        : null;

    CardPlace PlaceOf(Step step)
    {
        var planned = run.Plan.Step(step.Id);
        var uses = run.WayOf(step).Uses;
        return new CardPlace(planned.Oven, uses.Oven?.Shelves ?? 0, uses.Rings, planned.Grill, planned.Appliances);
    }

    Call? CallFor(Step step) => calls
        .Where(call => call.Step == step.Id && call.Tend is null && call.Due <= now && !call.IsAcknowledged)
        .OrderByDescending(call => call.Priority)
        .FirstOrDefault();
}
