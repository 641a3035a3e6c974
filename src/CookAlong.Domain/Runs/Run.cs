using System.Collections.Immutable;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>The plan being cooked: immutable state, made of its events.</summary>
public sealed partial record Run
{
    readonly Meal? meal;
    readonly Plan? plan;

    Run(RunId id) => Id = id;

    public RunId Id { get; }

    /// <summary>The last event it knows of; 0 = not begun.</summary>
    public long Sequence { get; private init; }

    /// <summary>The last event that a new plan must know of: somebody began, ended, took or was given work.</summary>
    public long PlanBasis { get; private init; }

    public bool HasBegun => meal is not null;

    public Meal Meal { get => meal ?? throw new InvalidOperationException("The run has not begun."); private init => meal = value; }

    /// <summary>What people were told last.</summary>
    public Plan Plan { get => plan ?? throw new InvalidOperationException("The run has not begun."); private init => plan = value; }

    /// <summary>The last new plan; null while the first one holds.</summary>
    public PlanTaken? Taken { get; private init; }

    /// <summary>Set by the host: a new plan that moves nobody's next step further than this many minutes is taken by itself.</summary>
    public int? PlanRule { get; private init; }

    public DateTimeOffset? Began { get; private init; }

    public DateTimeOffset? Ended { get; private init; }

    public RunPause? Pause { get; private init; }

    public ImmutableDictionary<PersonId, RunPerson> People { get; private init; } = ImmutableDictionary<PersonId, RunPerson>.Empty;

    /// <summary>The meal's helpers and the hands that walked in, in an order that never changes; those put out stay in it.</summary>
    public ImmutableArray<Helper> Helpers { get; private init; } = [];

    /// <summary>Only steps that were touched; <see cref="StateOf"/> answers for all.</summary>
    public ImmutableDictionary<StepId, StepState> Steps { get; private init; } = ImmutableDictionary<StepId, StepState>.Empty;

    public ImmutableDictionary<TendTurn, DateTimeOffset> TendsDone { get; private init; } = ImmutableDictionary<TendTurn, DateTimeOffset>.Empty;

    public ImmutableDictionary<CallId, DateTimeOffset> Acknowledged { get; private init; } = ImmutableDictionary<CallId, DateTimeOffset>.Empty;

    /// <summary>Taps that had an effect, so that a repeated sending has none.</summary>
    public ImmutableHashSet<CommandId> Commands { get; private init; } = [];

    public static Run Empty(RunId id) => new(id);

    /// <summary>The events that begin a run; no tap can, since nobody is in it yet.</summary>
    /// <param name="host">The host who starts it.</param>
    /// <param name="hands">Which of the meal's helpers the host is; null = none of them.</param>
    /// <param name="authority">Whose limits the household goes by; null = nobody's, and then nothing is said of resting.</param>
    public static ImmutableArray<RunEvent> Start(Meal meal, Plan plan, PersonId host, string name, HelperId? hands, Region? authority = null)
    {
        if (plan.Status == PlanStatus.None || meal.Steps.Any(step => plan.Steps.All(planned => planned.Step != step.Id)))
        {
            throw new ArgumentException("A run needs a plan of every step of its meal.", nameof(plan));
        }

        ImmutableArray<RunEvent> begun = [new RunEvent.RunStarted(meal, plan), new RunEvent.PersonJoined(host, name, Role.Host, hands)];
        return authority is { } region ? begun.Add(new RunEvent.AuthoritySet(region)) : begun;
    }

    public StepState StateOf(StepId step) => Steps.GetValueOrDefault(step, StepState.Untouched);

    /// <summary>The way the plan chose for a step.</summary>
    public Way WayOf(Step step) => step.WayOf(Plan.Step(step.Id).Option);

    /// <summary>Planned minutes and what was added since.</summary>
    public int MinutesOf(StepId step) => Plan.Step(step).Minutes + StateOf(step).BeyondPlan;

    public Helper? HelperOf(RunPerson who) => Helpers.FirstOrDefault(helper => helper.Id == who.Helper);

    /// <summary>Who has joined as this helper.</summary>
    public RunPerson? PersonOf(HelperId helper) => People.Values.FirstOrDefault(person => person.Helper == helper);

    /// <summary>Tends of a step that were done late, or not at all.</summary>
    public ImmutableArray<TendNote> TendNotesOf(StepId step) => Tending.Notes(this, Meal.Step(step));

    /// <summary>Whose step it is: who took it or was given it, else as planned.</summary>
    public ImmutableArray<HelperId> HoldersOf(StepId step) => StateOf(step).Holders ?? Plan.Step(step).Helpers;

    /// <summary>
    /// Room for one more pair of hands. A holder counts only once joined: work planned for, or given to, somebody
    /// who is not here by phone, or will have gone, is free to whoever is.
    /// </summary>
    public bool HasRoom(Step step)
    {
        var way = WayOf(step);
        return HoldersHere(step.Id).Count() < (way.Attention == Attention.HandsOn ? way.People : 1);
    }

    /// <summary>A helper may claim it: unfinished work for hands, or a tray or pan to see to, with room for them.</summary>
    public bool IsFree(Step step)
    {
        var way = WayOf(step);
        return StateOf(step.Id).Finished is null && (way.Attention == Attention.HandsOn || way.Uses.IsOnTheHeat) && HasRoom(step);
    }

    IEnumerable<HelperId> HoldersHere(StepId step) => HoldersOf(step).Where(helper => PersonOf(helper) is not null && !HasGoneBy(helper, step));

    bool IsHeldBy(StepId step, RunPerson who) => who.Helper is { } helper && HoldersOf(step).Contains(helper);

    /// <summary>The first step it still waits for.</summary>
    StepId? WaitsFor(Step step) => step.After.Where(after => StateOf(after.Step).Finished is null).Select(after => (StepId?)after.Step).FirstOrDefault();
}
