using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

// What may be done to a step. A host may do everything to every step; a helper what is theirs, free, or needs nobody's hands.
public sealed partial record Run
{
    Decision OnStep(StepId id, Func<Step, Decision> decide) =>
        Meal.Steps.FirstOrDefault(step => step.Id == id) is { } step ? decide(step) : new Refusal.UnknownStep(id);

    /// <summary>A helper who starts free work with their hands takes it by that.</summary>
    Decision Start(Step step, RunPerson who)
    {
        var state = StateOf(step.Id);
        if (state.Finished is { } end)
        {
            return new Refusal.AlreadyFinished(step.Id, end);
        }

        if (state.Started is { } start)
        {
            return new Refusal.AlreadyStarted(step.Id, start);
        }

        if (Pause is not null)
        {
            return new Refusal.Paused();
        }

        if (WaitsFor(step) is { } unfinished)
        {
            return new Refusal.WaitsFor(step.Id, unfinished);
        }

        var started = new RunEvent.StepStarted(step.Id);
        if (who is not { Role: Role.Helper, Helper: { } hands } || WayOf(step).Attention != Attention.HandsOn || IsHeldBy(step.Id, who))
        {
            return ObjectionTo(step, who) is { } objection ? objection : started;
        }

        return (ObjectionTo(step, who) ?? ObjectionTo(step, HelperOf(who)!)) is { } why
            ? why
            : new Decision.Accepted([new RunEvent.StepClaimed(step.Id, hands), started]);
    }

    /// <summary>Ticking off is a report, so it is heard in a pause too, and needs no start before it.</summary>
    Decision Finish(Step step, RunPerson who)
    {
        var state = StateOf(step.Id);
        if (state.Finished is { } end)
        {
            return new Refusal.AlreadyFinished(step.Id, end);
        }

        if (WaitsFor(step) is { } unfinished)
        {
            return new Refusal.WaitsFor(step.Id, unfinished);
        }

        if (ObjectionTo(step, who) is { } objection)
        {
            return objection;
        }

        if (NotDoneInside(step) is { } notYet)
        {
            return notYet;
        }

        var finished = new RunEvent.StepFinished(step.Id);
        return step.PauseAfter && Pause is null
            ? new Decision.Accepted([finished, new RunEvent.KitchenPaused(step.Id)])
            : finished;
    }

    Decision TakeBack(Step step, RunPerson who)
    {
        var state = StateOf(step.Id);
        if (state.Started is null)
        {
            return new Refusal.NotStarted(step.Id);
        }

        if (ObjectionTo(step, who) is { } objection)
        {
            return objection;
        }

        var begun = Meal.Steps.FirstOrDefault(other => other.After.Any(after => after.Step == step.Id) && StateOf(other.Id).Started is not null);
        if (begun is not null)
        {
            return new Refusal.OthersWentOn(step.Id, begun.Id);
        }

        var takenBack = new RunEvent.StepTakenBack(step.Id);
        return state.Finished is not null && Pause?.After == step.Id
            ? new Decision.Accepted([takenBack, new RunEvent.KitchenWentOn()])
            : takenBack;
    }

    /// <summary>A host whom the plan does not know becomes a pair of hands by taking something; watchers do not get here.</summary>
    Decision Claim(Step step, RunPerson who)
    {
        if (StateOf(step.Id).Finished is { } end)
        {
            return new Refusal.AlreadyFinished(step.Id, end);
        }

        if (who.Helper is not { } hands)
        {
            var lent = WalkIn();
            return HasRoom(step)
                ? new Decision.Accepted([new RunEvent.PersonJoined(who.Person, who.Name, who.Role, lent), new RunEvent.StepClaimed(step.Id, lent)])
                : new Refusal.Taken(step.Id, HoldersHere(step.Id).First());
        }

        if (ObjectionTo(step, HelperOf(who)!) is { } objection)
        {
            return objection;
        }

        if (IsHeldBy(step.Id, who))
        {
            return Decision.Nothing;
        }

        return HasRoom(step) ? new RunEvent.StepClaimed(step.Id, hands) : new Refusal.Taken(step.Id, HoldersHere(step.Id).First());
    }

    Decision LetGo(Step step, RunPerson who) =>
        StateOf(step.Id).Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
        : IsHeldBy(step.Id, who) ? new RunEvent.StepLetGo(step.Id, who.Helper!.Value)
        : new Refusal.NotYours(step.Id);

    Decision AddTime(Step step, int minutes, RunPerson who) =>
        StateOf(step.Id).Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
        : minutes is < 1 or > 120 ? new Refusal.OutOfRange("minutes", 1, 120)
        : ObjectionTo(step, who) is { } objection ? objection
        : new RunEvent.TimeAdded(step.Id, minutes);

    /// <summary>Whoever is near may do a tend, if it is safe for them.</summary>
    Decision FinishTend(Step step, int tend, int turn, RunPerson who)
    {
        if (tend < 0 || tend >= step.Tends.Length || turn < 0 || turn >= step.Tends[tend].Times(MinutesOf(step.Id)).Count())
        {
            return new Refusal.UnknownTend(step.Id);
        }

        if (TendsDone.TryGetValue(new TendTurn(step.Id, tend, turn), out var done))
        {
            return new Refusal.TendAlreadyDone(step.Id, done);
        }

        var state = StateOf(step.Id);
        if (state.Finished is { } end)
        {
            return new Refusal.AlreadyFinished(step.Id, end);
        }

        if (state.Started is null)
        {
            return new Refusal.NotStarted(step.Id);
        }

        return ObjectionTo(step, step.Tends[tend], who) is { } objection ? objection : new RunEvent.TendFinished(step.Id, tend, turn);
    }

    /// <summary>Why this person may not do a tend, or say that it was not done.</summary>
    Refusal? ObjectionTo(Step step, Tend tend, RunPerson who)
    {
        var helper = HelperOf(who);
        return helper is { IsChild: true } && !tend.ChildSafe ? new Refusal.NotForChildren(step.Id)
            : MissingSkill(step, helper) is { } skill ? new Refusal.NeedsSkill(step.Id, skill)
            : null;
    }

    /// <summary>Why this person may not start, finish, take back or lengthen this step.</summary>
    Refusal? ObjectionTo(Step step, RunPerson who) =>
        who.Role == Role.Host ? null
        : HelperOf(who) is { IsChild: true } && !step.ChildSafe ? new Refusal.NotForChildren(step.Id)
        : WayOf(step).Attention != Attention.HandsOn || IsHeldBy(step.Id, who) || HasRoom(step) ? null
        : new Refusal.NotYours(step.Id);

    /// <summary>Why this pair of hands may not have this step.</summary>
    static Refusal? ObjectionTo(Step step, Helper helper) =>
        helper.IsChild && !step.ChildSafe ? new Refusal.NotForChildren(step.Id)
        : MissingSkill(step, helper) is { } skill ? new Refusal.NeedsSkill(step.Id, skill)
        : null;

    static string? MissingSkill(Step step, Helper? helper) => step.Needs.FirstOrDefault(skill => helper?.Can is { } can && !can.Contains(skill));
}
