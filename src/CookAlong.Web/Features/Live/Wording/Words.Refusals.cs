using System.Diagnostics;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Wording;

public sealed partial class Words
{
    /// <summary>Why a tap changed nothing, and where it helps, what to do instead.</summary>
    public string Of(Refusal refusal) => refusal switch
    {
        Refusal.RunOver => "The meal is over; nothing more can be changed.",
        Refusal.NotInThisRun => "This screen is not in this kitchen. Ask the host for the code and join again.",
        Refusal.NotYourRole { Needed: Role.Host } => "Only the host cook can do that.",
        Refusal.NotYourRole { Needed: Role.Helper } => "Watchers only look. Ask the host to let you in as a helper.",
        Refusal.NotYourRole { Needed: Role.Watcher } => "You cannot do that here.",
        Refusal.UnknownStep => "The plan has no such step any more. The board shows what there is now.",
        Refusal.AlreadyFinished one => $"{Step(one.Step)} was done at {At(one.At)} already.",
        Refusal.AlreadyStarted one => $"{Step(one.Step)} was started at {At(one.At)} already.",
        Refusal.NotStarted one => $"{Step(one.Step)} has not begun, so there is nothing to take back.",
        Refusal.WaitsFor one => $"{Step(one.Step)} waits for {Step(one.Unfinished)}, which is not done yet.",
        Refusal.OthersWentOn one => $"{Step(one.Step)} cannot be taken back: {Step(one.Begun)} has begun after it. Take that back first.",
        Refusal.Paused => "Everyone is waiting: nothing new starts until the host says go on.",
        Refusal.NotPaused => "The kitchen is not paused; it is going on.",
        Refusal.Taken one => $"{Name(one.By)} took {Step(one.Step)} first.",
        Refusal.NotYours one => $"{Step(one.Step)} is not your job. Whoever has it can do that, or the host.",
        Refusal.NotForChildren one => $"{Step(one.Step)} is not a job for a child. Ask a grown-up.",
        Refusal.NeedsSkill one => $"{Step(one.Step)} needs somebody for “{one.Skill}”. Ask the host who can.",
        Refusal.UnknownHelper => "Nobody of that name is in the plan.",
        Refusal.HelperTaken one => $"Somebody has joined as {Name(one.Helper)} already. Join under another name, or ask the host to put the other screen out.",
        Refusal.HostStays => "A host cannot be put out.",
        Refusal.UnknownTend one => $"{Step(one.Step)} has no such turn any more.",
        Refusal.TendAlreadyDone one => $"That turn of {Step(one.Step)} was done at {At(one.At)} already.",
        Refusal.NoCore one => $"{Step(one.Step)} has no core temperature to reach.",
        Refusal.CoreNotReached one => NotYet(one),
        Refusal.CoreNotLongEnough one => NotYet(one),
        Refusal.UnknownCall => "That call is past.",
        Refusal.UnknownDish => "That dish is not part of the meal any more.",
        Refusal.OnlyDish => "That is the only dish left. To stop altogether, end the meal.",
        Refusal.DishIsThere one => $"{DishName(one.Dish)} is on the menu already. If it was left out, bring it back.",
        Refusal.NothingToCook one => $"{one.Dish} has no steps: there is nothing to plan. Put it on the table when you like.",
        Refusal.NoPlaceFor one => $"“{one.Step}” needs an oven, a grill or a thing that this kitchen has not.",
        Refusal.UnknownCourse => "The meal has no such course.",
        Refusal.TableTimePast => "That table time would be past already.",
        Refusal.UnknownOven => "The plan heats no such oven.",
        Refusal.PlanIsStale => "The kitchen moved on since that plan was made. A new one is on its way.",
        Refusal.NothingToTakeBack => "There is nothing of it left to take back.",
        Refusal.NoPlanBefore => "The first plan still holds: there is none before it to go back to.",
        Refusal.NotHere one => $"{Name(one.Helper)} is not here with a screen. Hand it to somebody who is, or let it go.",
        Refusal.OutOfRange one => $"{one.What} must lie between {one.Least} and {one.Most}.",
        _ => throw new UnreachableException($"A refusal without a sentence: {refusal.GetType().Name}."),
    };
}
