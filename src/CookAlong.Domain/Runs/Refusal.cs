namespace CookAlong.Domain.Runs;

/// <summary>Why a tap changed nothing: an expected answer with its facts, never an exception. The sentence is made at the edge.</summary>
public abstract record Refusal
{
    public sealed record RunOver : Refusal;

    public sealed record NotInThisRun : Refusal;

    public sealed record NotYourRole(Role Needed) : Refusal;

    public sealed record UnknownStep(StepId Step) : Refusal;

    public sealed record AlreadyFinished(StepId Step, DateTimeOffset At) : Refusal;

    public sealed record AlreadyStarted(StepId Step, DateTimeOffset At) : Refusal;

    /// <summary>Nothing to take back.</summary>
    public sealed record NotStarted(StepId Step) : Refusal;

    public sealed record WaitsFor(StepId Step, StepId Unfinished) : Refusal;

    /// <summary>Cannot be taken back: a step after it has begun.</summary>
    public sealed record OthersWentOn(StepId Step, StepId Begun) : Refusal;

    public sealed record Paused : Refusal;

    public sealed record NotPaused : Refusal;

    public sealed record Taken(StepId Step, HelperId By) : Refusal;

    public sealed record NotYours(StepId Step) : Refusal;

    public sealed record NotForChildren(StepId Step) : Refusal;

    public sealed record NeedsSkill(StepId Step, string Skill) : Refusal;

    public sealed record UnknownHelper(HelperId Helper) : Refusal;

    public sealed record HelperTaken(HelperId Helper) : Refusal;

    /// <summary>A host cannot be put out of a run.</summary>
    public sealed record HostStays : Refusal;

    public sealed record UnknownTend(StepId Step) : Refusal;

    public sealed record TendAlreadyDone(StepId Step, DateTimeOffset At) : Refusal;

    /// <summary>It has no core temperature to read.</summary>
    public sealed record NoCore(StepId Step) : Refusal;

    /// <param name="Last">The last reading; null = none was taken.</param>
    /// <param name="Likely">When it will be there, as far as the readings tell.</param>
    public sealed record CoreNotReached(StepId Step, int Celsius, CoreReading? Last, DateTimeOffset? Likely) : Refusal;

    /// <param name="Until">From then on a reading at the temperature ends it.</param>
    public sealed record CoreNotLongEnough(StepId Step, int Celsius, int Minutes, DateTimeOffset Until) : Refusal;

    public sealed record UnknownCall(CallId Call) : Refusal;

    public sealed record UnknownDish(DishId Dish) : Refusal;

    /// <summary>Nothing would be left to cook.</summary>
    public sealed record OnlyDish(DishId Dish) : Refusal;

    /// <summary>It is cooked already, or was left out and can be brought back.</summary>
    public sealed record DishIsThere(DishId Dish) : Refusal;

    /// <summary>A dish without steps needs nobody's time: it need not be added.</summary>
    public sealed record NothingToCook(string Dish) : Refusal;

    /// <summary>This kitchen has no oven, grill or thing for it.</summary>
    public sealed record NoPlaceFor(string Step) : Refusal;

    public sealed record UnknownCourse(CourseId Course) : Refusal;

    public sealed record TableTimePast(CourseId Course) : Refusal;

    /// <summary>Or one that the plan does not heat.</summary>
    public sealed record UnknownOven(OvenId Oven) : Refusal;

    public sealed record PlanIsStale : Refusal;

    /// <summary>It was taken back already, or never was.</summary>
    public sealed record NothingToTakeBack : Refusal;

    /// <summary>The first plan still holds.</summary>
    public sealed record NoPlanBefore : Refusal;

    /// <summary>Nobody who is here by a screen of their own.</summary>
    public sealed record NotHere(HelperId Helper) : Refusal;

    public sealed record OutOfRange(string What, int Least, int Most) : Refusal;
}
