using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs;

// Whose a step is: handed on, taken over, kept a little longer, and free again when nobody begins it.
public sealed partial record Run
{
    /// <summary>How long after its call a step that nobody begins stays with who has it, and how much longer "I am on it" keeps it. Common practice, no source.</summary>
    const int KeptFor = 5;

    /// <summary>When a pause was last over; nobody could begin anything before.</summary>
    DateTimeOffset? WentOn { get; init; }

    /// <summary>Somebody took it or was given it; it is not theirs by the plan alone.</summary>
    public bool IsClaimed(StepId step) => StateOf(step).HeldSince is not null && HoldersHere(step).Any();

    /// <summary>
    /// Until when a step of hands that is due and not begun is its holders'; null where it is not due, has begun, or is nobody's
    /// who is here. It runs from the call, but no sooner than they took it, had another step done, or the pause was over.
    /// </summary>
    internal Minute? HeldUntil(Step step, Expectation expected, DateTimeOffset now)
    {
        var state = StateOf(step.Id);
        if (state.Started is not null || Pause is not null || WayOf(step).Attention != Attention.HandsOn
            || !expected.IsReady(step) || expected.Starts(step.Id) > now || !HoldersHere(step.Id).Any())
        {
            return null;
        }

        var holders = HoldersHere(step.Id).ToHashSet();
        var since = Meal.Steps.Where(other => HoldersOf(other.Id).Any(holders.Contains)).Select(other => StateOf(other.Id).Finished)
            .Append(state.HeldSince).Append(WentOn).Append(expected.CalledAt(step))
            .Max()!.Value;
        var whole = Minute.Of(since).Utc == since ? Minute.Of(since) : Minute.Of(since) + 1;
        return Minute.Later(whole + KeptFor, state.KeptUntil ?? whole);
    }

    /// <summary>Before it is due there is nothing to keep. A host may say it for whoever is at it.</summary>
    Decision Keep(Step step, RunPerson who, DateTimeOffset now) =>
        StateOf(step.Id).Started is { } start ? new Refusal.AlreadyStarted(step.Id, start)
        : !IsHeldBy(step.Id, who) && who.Role != Role.Host ? new Refusal.NotYours(step.Id)
        : HeldUntil(step, new Expectation(this, now), now) is { } until
            ? new RunEvent.ClaimKept(step.Id, IsHeldBy(step.Id, who) ? who.Helper!.Value : HoldersHere(step.Id).First(), until + KeptFor)
        : Decision.Nothing;

    /// <summary>What the plan alone gave somebody stays theirs while their phone is heard of.</summary>
    Decision Free(Step step, HelperId from, bool isSilent, DateTimeOffset now) =>
        HoldersHere(step.Id).Contains(from) && (isSilent || IsClaimed(step.Id)) && HeldUntil(step, new Expectation(this, now), now) is { } until && until.Utc <= now
            ? new RunEvent.ClaimFreed(step.Id, from)
            : Decision.Nothing;

    /// <summary>The host gives to anybody, and whole; a helper hands on their own part, to somebody with a screen here.</summary>
    Decision Give(Step step, HelperId to, RunPerson who)
    {
        if (StateOf(step.Id).Finished is { } end)
        {
            return new Refusal.AlreadyFinished(step.Id, end);
        }

        if (Helpers.FirstOrDefault(helper => helper.Id == to) is not { } helper)
        {
            return new Refusal.UnknownHelper(to);
        }

        if (ObjectionTo(step, helper) is { } objection)
        {
            return objection;
        }

        return who.Role == Role.Host ? new RunEvent.StepGiven(step.Id, to)
            : !IsHeldBy(step.Id, who) ? new Refusal.NotYours(step.Id)
            : PersonOf(to) is null ? new Refusal.NotHere(to)
            : HoldersOf(step.Id).Contains(to) ? new Refusal.Taken(step.Id, to)
            : new RunEvent.StepHandedOver(step.Id, who.Helper!.Value, to);
    }

    /// <summary>A host whom the plan does not know becomes a pair of hands by it.</summary>
    Decision TakeOver(Step step, RunPerson who)
    {
        if (StateOf(step.Id).Finished is { } end)
        {
            return new Refusal.AlreadyFinished(step.Id, end);
        }

        if (who.Helper is not { } hands)
        {
            var lent = WalkIn();
            return new Decision.Accepted([new RunEvent.PersonJoined(who.Person, who.Name, who.Role, lent), new RunEvent.StepGiven(step.Id, lent)]);
        }

        return HoldersOf(step.Id) is [var only] && only == hands ? Decision.Nothing
            : ObjectionTo(step, HelperOf(who)!) is { } objection ? objection
            : new RunEvent.StepGiven(step.Id, hands);
    }

    /// <summary>Only while it is still as it was given; by the host, or by whoever handed it over as long as it has not begun.</summary>
    Decision TakeBackGiving(Step step, RunPerson who)
    {
        var state = StateOf(step.Id);
        return state.Givings is not [.., var last] || !HoldersOf(step.Id).ToHashSet().SetEquals(last.After) ? new Refusal.NothingToTakeBack()
            : state.Finished is { } end ? new Refusal.AlreadyFinished(step.Id, end)
            : who.Role == Role.Host ? new RunEvent.GivingTakenBack(step.Id)
            : last.From is null || last.From != who.Helper ? new Refusal.NotYours(step.Id)
            : state.Started is { } start ? new Refusal.AlreadyStarted(step.Id, start)
            : new RunEvent.GivingTakenBack(step.Id);
    }

    Run WithGiven(StepId step, HelperId? from, ImmutableArray<HelperId> to, DateTimeOffset at) => WithStep(step, state => state with
    {
        Holders = to,
        HeldSince = at,
        Givings = state.Givings.Add(new Giving(from, state.Holders, state.HeldSince, to)),
    });

    Run WithGivingTakenBack(StepId step) => WithStep(step, state => state with
    {
        Holders = state.Givings[^1].Before,
        HeldSince = state.Givings[^1].Since,
        Givings = state.Givings[..^1],
    });
}
