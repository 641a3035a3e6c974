using System.Collections.Immutable;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>What happened in the kitchen. A run is nothing but these, in order.</summary>
public abstract record RunEvent
{
    public sealed record RunStarted(Meal Meal, Plan Plan) : RunEvent;

    /// <summary>Whose limits this kitchen goes by.</summary>
    public sealed record AuthoritySet(Region Region) : RunEvent;

    /// <param name="Helper">Who they are in the plan, or the new pair of hands they add; null for a watcher.</param>
    public sealed record PersonJoined(PersonId Person, string Name, Role Role, HelperId? Helper) : RunEvent;

    public sealed record PersonPutOut(PersonId Person) : RunEvent;

    public sealed record StepStarted(StepId Step) : RunEvent;

    public sealed record StepFinished(StepId Step) : RunEvent;

    public sealed record StepTakenBack(StepId Step) : RunEvent;

    public sealed record StepClaimed(StepId Step, HelperId Helper) : RunEvent;

    public sealed record StepLetGo(StepId Step, HelperId Helper) : RunEvent;

    public sealed record StepGiven(StepId Step, HelperId To) : RunEvent;

    /// <summary>A helper's own step, handed on.</summary>
    public sealed record StepHandedOver(StepId Step, HelperId From, HelperId To) : RunEvent;

    /// <summary>Given or handed over by mistake: whose it was before has it.</summary>
    public sealed record GivingTakenBack(StepId Step) : RunEvent;

    /// <param name="Until">It stays with them until then, unless they begin.</param>
    public sealed record ClaimKept(StepId Step, HelperId Helper, Minute Until) : RunEvent;

    /// <summary>They had not begun it in time: it is free to take.</summary>
    public sealed record ClaimFreed(StepId Step, HelperId Helper) : RunEvent;

    public sealed record TimeAdded(StepId Step, int Minutes) : RunEvent;

    public sealed record TimeTakenBack(StepId Step, int Minutes) : RunEvent;

    public sealed record TendFinished(StepId Step, int Tend, int Turn) : RunEvent;

    public sealed record TendTakenBack(StepId Step, int Tend, int Turn) : RunEvent;

    /// <param name="Word">What was made of it then, with the readings before it; better arithmetic of a later version changes nothing of the past.</param>
    public sealed record CoreRead(StepId Step, decimal Celsius, DateTimeOffset At, CoreWord Word) : RunEvent;

    /// <summary>The last reading.</summary>
    public sealed record CoreTakenBack(StepId Step) : RunEvent;

    public sealed record CoreVouched(StepId Step, string Check) : RunEvent;

    public sealed record CoreWordTakenBack(StepId Step) : RunEvent;

    /// <param name="Rest">What it does by that, as it was understood then; null = no reading says.</param>
    public sealed record RestCovered(StepId Step, RestUnder Under, int RoomCelsius, RestWord? Rest) : RunEvent;

    /// <summary>Of the last thing said.</summary>
    /// <param name="RoomCelsius">Of the kitchen from then on.</param>
    /// <param name="Rest">What it does by what lay over it before; null = no reading says.</param>
    public sealed record CoverTakenBack(StepId Step, int RoomCelsius, RestWord? Rest) : RunEvent;

    public sealed record FoilSet(StepId Step, bool IsOn) : RunEvent;

    /// <summary>The last time it was laid on or taken off.</summary>
    public sealed record FoilTakenBack(StepId Step) : RunEvent;

    public sealed record CallAcknowledged(CallId Call) : RunEvent;

    public sealed record CallTakenBack(CallId Call) : RunEvent;

    /// <param name="After">The step whose pause point was reached; null when the host held everything.</param>
    public sealed record KitchenPaused(StepId? After) : RunEvent;

    public sealed record KitchenWentOn : RunEvent;

    public sealed record PlanAccepted(Plan Plan) : RunEvent;

    /// <param name="Plan">What people had been told before, with what has begun since as it is.</param>
    public sealed record PlanTakenBack(Plan Plan) : RunEvent;

    /// <param name="Minutes">How far a new plan that is taken by itself may move somebody's next step; null = none is.</param>
    public sealed record PlanRuleSet(int? Minutes) : RunEvent;

    /// <param name="From">They are not here any more from this minute on.</param>
    public sealed record HelperLeft(HelperId Helper, Minute From) : RunEvent;

    public sealed record HelperStayed(HelperId Helper) : RunEvent;

    /// <param name="Starts">When each of its steps is to begin until a new plan says otherwise.</param>
    public sealed record DishAdded(Dish Dish, ImmutableArray<StepStart> Starts) : RunEvent;

    public sealed record DishDropped(DishId Dish) : RunEvent;

    public sealed record DishBroughtBack(DishId Dish) : RunEvent;

    public sealed record TableMoved(CourseId Course, Minute To) : RunEvent;

    public sealed record TableMovedBack(CourseId Course, Minute To) : RunEvent;

    /// <param name="HotAt">It has this many °C no sooner.</param>
    public sealed record OvenBehind(OvenId Oven, Minute HotAt, int Celsius) : RunEvent;

    public sealed record OvenCaughtUp(OvenId Oven) : RunEvent;

    /// <param name="Reading">With what its dial stood at then, as it was understood then.</param>
    public sealed record OvenRead(OvenId Oven, OvenShown Reading) : RunEvent;

    /// <summary>The last reading.</summary>
    public sealed record OvenReadTakenBack(OvenId Oven) : RunEvent;

    public sealed record RunEnded : RunEvent;
}

/// <summary>An event as the log keeps it.</summary>
/// <param name="Sequence">1, 2, 3, ... without holes within a run.</param>
/// <param name="By">Null for what the kitchen did by itself.</param>
public sealed record Logged(long Sequence, CommandId Command, PersonId? By, DateTimeOffset At, RunEvent Event);
