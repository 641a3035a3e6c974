using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs;

/// <summary>What somebody in the kitchen asks for. <c>Run.Decide</c> answers with events or a <see cref="Refusal"/>.</summary>
public abstract record RunCommand
{
    /// <summary>A screen joins. <paramref name="As"/> names a helper of the meal; null adds a pair of hands nobody planned for, or a watcher.</summary>
    public sealed record Join(PersonId Person, string Name, Role Role, HelperId? As) : RunCommand;

    public sealed record PutOut(PersonId Person) : RunCommand;

    public sealed record StartStep(StepId Step) : RunCommand;

    /// <summary>Also for a step that nobody said was started.</summary>
    public sealed record FinishStep(StepId Step) : RunCommand;

    /// <summary>Undo: a finished step is running again, a running one waits again.</summary>
    public sealed record TakeBack(StepId Step) : RunCommand;

    public sealed record ClaimStep(StepId Step) : RunCommand;

    public sealed record LetGoStep(StepId Step) : RunCommand;

    /// <summary>The host gives a step to somebody, or a helper hands their own to somebody who is here.</summary>
    public sealed record GiveStep(StepId Step, HelperId To) : RunCommand;

    /// <summary>The host takes a step that somebody else has.</summary>
    public sealed record TakeOver(StepId Step) : RunCommand;

    /// <summary>A step that was given away, handed on or taken over is again whose it was before.</summary>
    public sealed record TakeBackGiving(StepId Step) : RunCommand;

    /// <summary>"I am on it": a step that is due stays with who has it a few minutes longer.</summary>
    public sealed record KeepStep(StepId Step) : RunCommand;

    /// <summary>The kitchen's own: a step nobody has begun is free again once its time is up.</summary>
    /// <param name="IsSilent">Nothing is heard of the helper's phone.</param>
    public sealed record FreeStep(StepId Step, HelperId From, bool IsSilent) : RunCommand;

    /// <param name="Minutes">1 to 120.</param>
    public sealed record AddTime(StepId Step, int Minutes) : RunCommand;

    /// <param name="Minutes">Of those that were added, and no more.</param>
    public sealed record TakeBackTime(StepId Step, int Minutes) : RunCommand;

    public sealed record FinishTend(StepId Step, int Tend, int Turn) : RunCommand;

    public sealed record TakeBackTend(StepId Step, int Tend, int Turn) : RunCommand;

    /// <param name="Celsius">In the middle of what cooks, read from a thermometer; -60 to 600.</param>
    /// <param name="At">When it was read, where that was not just now: a phone may have been out of reach. Not later than now, at most two hours ago.</param>
    public sealed record ReadCore(StepId Step, decimal Celsius, DateTimeOffset? At = null) : RunCommand;

    public sealed record TakeBackReading(StepId Step) : RunCommand;

    /// <summary>The host says that a step with a core temperature is done by another check.</summary>
    /// <param name="Check">What was looked at; 1 to 200 characters.</param>
    public sealed record VouchFor(StepId Step, string Check) : RunCommand;

    public sealed record TakeBackWord(StepId Step) : RunCommand;

    /// <summary>What lies, or will lie, over a joint that rests.</summary>
    /// <param name="RoomCelsius">Of the kitchen; 0 to 45.</param>
    public sealed record CoverRest(StepId Step, RestUnder Under, int RoomCelsius) : RunCommand;

    /// <summary>What was last said to lie over it does not.</summary>
    public sealed record TakeBackCover(StepId Step) : RunCommand;

    /// <summary>Foil goes over a joint that roasts, or comes off it.</summary>
    public sealed record SetFoil(StepId Step, bool IsOn) : RunCommand;

    /// <summary>It was not laid on, or not taken off.</summary>
    public sealed record TakeBackFoil(StepId Step) : RunCommand;

    public sealed record Acknowledge(CallId Call) : RunCommand;

    /// <summary>The call was not answered after all.</summary>
    public sealed record TakeBackAnswer(CallId Call) : RunCommand;

    /// <summary>"Hold everything": nothing new starts until the host says go on. What cooks goes on cooking.</summary>
    public sealed record HoldEverything : RunCommand;

    public sealed record GoOn : RunCommand;

    /// <summary>The host takes the plan that the re-planner offered; refused when the run has moved on since it was made.</summary>
    /// <param name="MadeAt">The run's sequence number the plan was made for.</param>
    public sealed record AcceptPlan(Plan Plan, long MadeAt) : RunCommand;

    /// <summary>Back to what people had been told before the last new plan; what has begun stays as it is.</summary>
    public sealed record TakeBackPlan : RunCommand;

    /// <summary>From now on a new plan is taken by itself when nobody's next step moves further than this, or only ever by the host.</summary>
    /// <param name="Minutes">0 to 60; null = the host takes each.</param>
    public sealed record SetPlanRule(int? Minutes) : RunCommand;

    /// <summary>Somebody goes home; asked again, the last word counts.</summary>
    /// <param name="InMinutes">From now, 0 to 600.</param>
    public sealed record HelperLeaves(HelperId Helper, int InMinutes) : RunCommand;

    /// <summary>Somebody who was said to go does not.</summary>
    public sealed record HelperStays(HelperId Helper) : RunCommand;

    /// <summary>The dish is left out; what of it cooks comes off the heat.</summary>
    public sealed record DropDish(DishId Dish) : RunCommand;

    /// <summary>A dish nobody had planned is cooked as well.</summary>
    /// <param name="Dish">With ids that no other of the meal has.</param>
    public sealed record AddDish(Dish Dish) : RunCommand;

    /// <summary>A dish that was left out is cooked after all, from where it was.</summary>
    public sealed record BringBackDish(DishId Dish) : RunCommand;

    /// <param name="Minutes">Later, or sooner where negative; -240 to 240, not 0. The new time must lie ahead.</param>
    public sealed record MoveTable(CourseId Course, int Minutes) : RunCommand;

    /// <summary>Back to the table time before the last move.</summary>
    public sealed record TakeBackTable(CourseId Course) : RunCommand;

    /// <summary>The oven is slower than was thought.</summary>
    /// <param name="Minutes">Until it will be as hot as its dial says, 1 to 60.</param>
    public sealed record OvenStillHeats(OvenId Oven, int Minutes) : RunCommand;

    /// <summary>It was not slow after all.</summary>
    public sealed record OvenOnTime(OvenId Oven) : RunCommand;

    /// <summary>A thermometer that stands in the oven was read.</summary>
    /// <param name="Celsius">-10 to 350.</param>
    /// <param name="At">When it was read, where that was not just now; as of a core reading.</param>
    public sealed record ReadOven(OvenId Oven, decimal Celsius, DateTimeOffset? At = null) : RunCommand;

    public sealed record TakeBackOvenReading(OvenId Oven) : RunCommand;

    public sealed record EndRun : RunCommand;
}

/// <summary>One tap: who asks for what, under an id that makes a repeated sending harmless.</summary>
/// <param name="By">Null for what the kitchen does by itself.</param>
public sealed record Tap(CommandId Id, PersonId? By, RunCommand Command);

public readonly record struct CommandId(Guid Value) { public override string ToString() => Value.ToString("D"); }

/// <summary>Somebody in this run, on whatever screens.</summary>
public readonly record struct PersonId(Guid Value) { public override string ToString() => Value.ToString("D"); }

public readonly record struct RunId(Guid Value) { public override string ToString() => Value.ToString("D"); }

/// <summary>Says what a call is about ("in:potatoes-roast"), so that the same call is the same on every device and after a restart.</summary>
public readonly record struct CallId(string Value) { public override string ToString() => Value; }

public enum Role { Watcher, Helper, Host }
