using System.Collections.Immutable;
using System.Diagnostics;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

public sealed partial record Run
{
    /// <summary>The run after one more event; events come in their order, without holes.</summary>
    public Run Apply(Logged logged)
    {
        if (logged.Sequence != Sequence + 1)
        {
            throw new InvalidOperationException($"Event {logged.Sequence} does not follow event {Sequence} of run {Id}.");
        }

        var next = With(logged.Event, logged);
        return next with
        {
            Sequence = logged.Sequence,
            PlanBasis = ChangesPlan(logged.Event, next) ? logged.Sequence : PlanBasis,
            Wish = WishAfter(logged),
            Upsets = UpsetsAfter(logged.Event),
            Commands = Commands.Add(logged.Command),
        };
    }

    Run With(RunEvent happened, Logged logged) => happened switch
    {
        RunEvent.RunStarted e => this with { Meal = e.Meal, Menu = e.Meal.Dishes, Plan = e.Plan, Helpers = e.Meal.Helpers, Began = logged.At },
        RunEvent.AuthoritySet e => this with { Authority = e.Region },
        RunEvent.PersonJoined e => WithPerson(new RunPerson(e.Person, e.Name, e.Role, e.Helper)),
        RunEvent.PersonPutOut e => this with { People = People.Remove(e.Person) },
        RunEvent.StepStarted e => WithMinutesByCore(WithStep(e.Step, state => state with { Started = logged.At, By = logged.By }), e.Step),
        RunEvent.StepFinished e => WithStep(e.Step, state => state with
        {
            Started = state.Started ?? MustHaveBegun(e.Step, logged.At),
            Finished = logged.At,
            By = logged.By,
        }),
        RunEvent.StepTakenBack e => WithTakenBack(e.Step),
        RunEvent.StepClaimed e => WithStep(e.Step, state => state with { Holders = [.. HoldersHere(e.Step), e.Helper], HeldSince = logged.At }),
        RunEvent.StepLetGo e => WithStep(e.Step, state => state with { Holders = HoldersOf(e.Step).Remove(e.Helper) }),
        RunEvent.StepGiven e => WithGiven(e.Step, from: null, [e.To], logged.At),
        RunEvent.StepHandedOver e => WithGiven(e.Step, e.From, HoldersOf(e.Step).Replace(e.From, e.To), logged.At),
        RunEvent.GivingTakenBack e => WithGivingTakenBack(e.Step),
        RunEvent.ClaimKept e => WithStep(e.Step, state => state with { KeptUntil = e.Until }),
        RunEvent.ClaimFreed e => WithStep(e.Step, state => state with { Holders = HoldersOf(e.Step).Remove(e.Helper), KeptUntil = null }),
        RunEvent.TimeAdded e => WithStep(e.Step, state => state with { ExtraMinutes = state.ExtraMinutes + e.Minutes }),
        RunEvent.TimeTakenBack e => WithTimeTakenBack(e.Step, e.Minutes),
        RunEvent.TendFinished e => this with { TendsDone = TendsDone.SetItem(new TendTurn(e.Step, e.Tend, e.Turn), logged.At) },
        RunEvent.TendTakenBack e => WithTendTakenBack(new TendTurn(e.Step, e.Tend, e.Turn)),
        RunEvent.CoreRead e => WithReading(e.Step, new CoreReading(e.At, e.Celsius, e.Word)),
        RunEvent.CoreTakenBack e => WithoutLastReading(e.Step),
        RunEvent.CoreVouched e => WithStep(e.Step, state => state with { Vouched = e.Check }),
        RunEvent.CoreWordTakenBack e => WithStep(e.Step, state => state with { Vouched = null }),
        RunEvent.FoilSet e => WithStep(e.Step, state => state with { Foil = e.IsOn ? state.Foil.Add(new FoilSpan(logged.At, null)) : [.. state.Foil[..^1], state.Foil[^1] with { To = logged.At }] }),
        RunEvent.FoilTakenBack e => WithStep(e.Step, state => state with { Foil = state.IsUnderFoil ? state.Foil[..^1] : [.. state.Foil[..^1], state.Foil[^1] with { To = null }] }),
        RunEvent.RestCovered e => WithCover(e, logged.At),
        RunEvent.CoverTakenBack e => WithCoverTakenBack(e),
        RunEvent.CallAcknowledged e => this with { Acknowledged = Acknowledged.SetItem(e.Call, logged.At) },
        RunEvent.CallTakenBack e => this with { Acknowledged = Acknowledged.Remove(e.Call) },
        RunEvent.KitchenPaused e => this with { Pause = new RunPause(logged.At, e.After, logged.Sequence) },
        RunEvent.KitchenWentOn => this with { Pause = null, WentOn = logged.At },
        RunEvent.PlanAccepted e => WithNewPlan(e.Plan, logged.At),
        RunEvent.PlanTakenBack e => WithPlanTakenBack(e.Plan, logged.At),
        RunEvent.PlanRuleSet e => this with { PlanRule = e.Minutes },
        RunEvent.HelperLeft e => WithLeft(e.Helper, e.From),
        RunEvent.HelperStayed e => WithStayed(e.Helper),
        RunEvent.DishAdded e => WithAdded(e.Dish, e.Starts),
        RunEvent.DishDropped e => WithDropped(e.Dish),
        RunEvent.DishBroughtBack e => WithBroughtBack(e.Dish),
        RunEvent.TableMoved e => WithTableMoved(e.Course, e.To),
        RunEvent.TableMovedBack e => WithTableMovedBack(e.Course, e.To),
        RunEvent.OvenBehind e => this with { SlowOvens = SlowOvens.SetItem(e.Oven, (e.HotAt, e.Celsius)) },
        RunEvent.OvenCaughtUp e => this with { SlowOvens = SlowOvens.Remove(e.Oven) },
        RunEvent.OvenRead e => this with { OvenReadings = OvenReadings.SetItem(e.Oven, [.. OvenReadings.GetValueOrDefault(e.Oven, []), e.Reading]) },
        RunEvent.OvenReadTakenBack e => WithoutLastOvenReading(e.Oven),
        RunEvent.RunEnded => this with { Ended = logged.At },
        _ => throw new UnreachableException($"No effect is written for {happened.GetType().Name}."),
    };

    bool ChangesPlan(RunEvent happened, Run next) => happened switch
    {
        RunEvent.RunStarted or RunEvent.StepStarted or RunEvent.StepFinished or RunEvent.StepTakenBack or RunEvent.StepClaimed
            or RunEvent.StepLetGo or RunEvent.StepGiven or RunEvent.StepHandedOver or RunEvent.GivingTakenBack or RunEvent.ClaimFreed or RunEvent.TimeAdded or RunEvent.TimeTakenBack
            or RunEvent.PlanAccepted or RunEvent.PlanTakenBack
            or RunEvent.HelperLeft or RunEvent.DishAdded or RunEvent.DishDropped or RunEvent.TableMoved or RunEvent.OvenBehind
            or RunEvent.HelperStayed or RunEvent.DishBroughtBack or RunEvent.TableMovedBack or RunEvent.OvenCaughtUp => true,
        RunEvent.CoreRead e => StateOf(e.Step).ByCoreTold != next.StateOf(e.Step).ByCoreTold,
        RunEvent.CoreTakenBack e => StateOf(e.Step).ByCoreTold != next.StateOf(e.Step).ByCoreTold,
        RunEvent.AuthoritySet or RunEvent.PersonJoined or RunEvent.PersonPutOut or RunEvent.TendFinished or RunEvent.TendTakenBack
            or RunEvent.CallAcknowledged or RunEvent.CallTakenBack or RunEvent.ClaimKept or RunEvent.PlanRuleSet or RunEvent.CoreVouched or RunEvent.CoreWordTakenBack or RunEvent.RestCovered or RunEvent.CoverTakenBack
            or RunEvent.OvenRead or RunEvent.OvenReadTakenBack or RunEvent.FoilSet or RunEvent.FoilTakenBack
            or RunEvent.KitchenPaused or RunEvent.KitchenWentOn or RunEvent.RunEnded => false,
        _ => throw new UnreachableException($"Nobody has said whether {happened.GetType().Name} changes the plan."),
    };

    Run WithStep(StepId step, Func<StepState, StepState> change) => this with { Steps = Steps.SetItem(step, change(StateOf(step))) };

    Run WithPerson(RunPerson person)
    {
        var isNew = person.Helper is { } hands && Helpers.All(helper => helper.Id != hands);
        return this with
        {
            People = People.SetItem(person.Person, person),
            Helpers = isNew ? Helpers.Add(new Helper(person.Helper!.Value, person.Name, [], Can: null, IsChild: false)) : Helpers,
        };
    }

    Run WithTakenBack(StepId step)
    {
        var wasFinished = StateOf(step).Finished is not null;
        var next = WithStep(step, state => wasFinished
            ? state with { Finished = null, Undone = state.Undone + 1 }
            : state with { Started = null, By = null, ByCore = 0, Undone = state.Undone + 1 });
        return wasFinished ? next : (next with { TendsDone = TendsDone.RemoveRange(TendsDone.Keys.Where(turn => turn.Step == step)) }).WithoutReadingsOutOfHeat(step);
    }

    /// <summary>
    /// A new plan already counts what was added to, and who took, the work that has not begun. Work that has begun stays
    /// as long as it is, whatever of its length the plan counts.
    /// </summary>
    Run WithPlan(Plan accepted, DateTimeOffset at) => WithPlacesKept() with
    {
        Plan = accepted,
        SlowOvens = SlowOvens.Clear(),
        Tables = Tables.ToImmutableDictionary(entry => entry.Key, entry => entry.Value.Select(before => before with { Served = null }).ToImmutableArray()),
        Taken = new PlanTaken(at, PlanDifference.Of(PlanAsItStands, accepted, step => StateOf(step).Started is null)),
        Steps = Steps.ToImmutableDictionary(
            entry => entry.Key,
            entry => entry.Value.Started is null
                ? AheadByPlan(entry.Key, entry.Value, accepted)
                : entry.Value with { CountedByPlan = accepted.Step(entry.Key).Minutes + entry.Value.ExtraMinutes + entry.Value.ByCore - MinutesOf(entry.Key) }),
    };

    StepState AheadByPlan(StepId step, StepState state, Plan accepted) => StepState.Untouched with
    {
        Undone = state.Undone,
        Readings = state.Readings,
        Covers = state.Covers,
        CoversBefore = state.CoversBefore,
        Foil = state.Foil,
        Vouched = state.Vouched,
        HeldSince = HoldersOf(step).ToHashSet().SetEquals(accepted.Step(step).Helpers) ? state.HeldSince : null,
        Givings = [.. state.Givings.Select(giving => giving with { Before = giving.Before ?? Plan.Step(step).Helpers })],
    };

    /// <summary>For a step nobody said was started: its planned start or the end of what it waited for, whichever is later, and at most now.</summary>
    DateTimeOffset MustHaveBegun(StepId id, DateTimeOffset now)
    {
        var begun = Plan.Step(id).Start.Utc;
        foreach (var after in Meal.Step(id).After)
        {
            if (StateOf(after.Step).Finished is { } end && end.AddMinutes(after.Least) > begun)
            {
                begun = end.AddMinutes(after.Least);
            }
        }

        return begun < now ? begun : now;
    }
}
