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

    /// <summary>The host hands a step to somebody.</summary>
    public sealed record GiveStep(StepId Step, HelperId To) : RunCommand;

    /// <param name="Minutes">1 to 120.</param>
    public sealed record AddTime(StepId Step, int Minutes) : RunCommand;

    public sealed record FinishTend(StepId Step, int Tend, int Turn) : RunCommand;

    public sealed record Acknowledge(CallId Call) : RunCommand;

    /// <summary>"Hold everything": nothing new starts until the host says go on. What cooks goes on cooking.</summary>
    public sealed record HoldEverything : RunCommand;

    public sealed record GoOn : RunCommand;

    /// <summary>The host takes the plan that the re-planner offered; refused when the run has moved on since it was made.</summary>
    /// <param name="MadeAt">The run's sequence number the plan was made for.</param>
    public sealed record AcceptPlan(Plan Plan, long MadeAt) : RunCommand;

    /// <summary>Somebody goes home; asked again, the last word counts.</summary>
    /// <param name="InMinutes">From now, 0 to 600.</param>
    public sealed record HelperLeaves(HelperId Helper, int InMinutes) : RunCommand;

    /// <summary>The dish is left out; what of it cooks comes off the heat.</summary>
    public sealed record DropDish(DishId Dish) : RunCommand;

    /// <param name="Minutes">Later, or sooner where negative; -240 to 240, not 0. The new time must lie ahead.</param>
    public sealed record MoveTable(CourseId Course, int Minutes) : RunCommand;

    /// <summary>The oven is slower than was thought.</summary>
    /// <param name="Minutes">Until it will be as hot as its dial says, 1 to 60.</param>
    public sealed record OvenStillHeats(OvenId Oven, int Minutes) : RunCommand;

    public sealed record EndRun : RunCommand;
}

/// <summary>One tap: who asks for what, under an id that makes a repeated sending harmless.</summary>
public sealed record Tap(CommandId Id, PersonId By, RunCommand Command);

public readonly record struct CommandId(Guid Value) { public override string ToString() => Value.ToString("D"); }

/// <summary>Somebody in this run, on whatever screens.</summary>
public readonly record struct PersonId(Guid Value) { public override string ToString() => Value.ToString("D"); }

public readonly record struct RunId(Guid Value) { public override string ToString() => Value.ToString("D"); }

/// <summary>Says what a call is about ("in:potatoes-roast"), so that the same call is the same on every device and after a restart.</summary>
public readonly record struct CallId(string Value) { public override string ToString() => Value; }

public enum Role { Watcher, Helper, Host }
