using System.Collections.Immutable;

namespace CookAlong.Domain.Runs;

// Why a new plan is asked for though table time has not slipped.
public sealed partial record Run
{
    /// <summary>Finished so long before it was expected to be that work may be pulled forward, in minutes.</summary>
    const int WorthPullingForward = 5;

    /// <summary>Something has happened that the plan people were told does not know of; null once a new one was taken.</summary>
    public PlanWish? Wish { get; private init; }

    /// <summary>What has upset the plan since it was told; what is taken back is none of them any more.</summary>
    ImmutableHashSet<string> Upsets { get; init; } = [];

    PlanWish? WishAfter(Logged logged)
    {
        if (logged.Event is RunEvent.PlanAccepted)
        {
            return null;
        }

        if (logged.Event is RunEvent.PlanTakenBack)
        {
            return PlansBefore[^1].Wish;
        }

        if (UpsetBy(logged.Event) is { } upset)
        {
            var isSettled = upset.IsTakenBack && Upsets.Contains(upset.What);
            return !isSettled ? new PlanWish(logged.Sequence, IsEarly: false) : Upsets.Count > 1 ? Wish : null;
        }

        var isEarly = logged.Event is RunEvent.StepFinished finished && ExpectedEnd(finished.Step) - Minute.Of(logged.At) >= WorthPullingForward;
        return Wish is null && isEarly ? new PlanWish(logged.Sequence, IsEarly: true) : Wish;
    }

    ImmutableHashSet<string> UpsetsAfter(RunEvent happened) => happened switch
    {
        RunEvent.PlanAccepted => [],
        RunEvent.PlanTakenBack => PlansBefore[^1].Upsets,
        _ => UpsetBy(happened) is not { } upset ? Upsets
            : upset.IsTakenBack && Upsets.Contains(upset.What) ? Upsets.Remove(upset.What)
            : Upsets.Add(upset.What),
    };

    /// <summary>Each move of a table is an upset of its own; all else about one thing is one.</summary>
    (string What, bool IsTakenBack)? UpsetBy(RunEvent happened) => happened switch
    {
        RunEvent.HelperLeft e => ($"helper:{e.Helper}", false),
        RunEvent.HelperStayed e => ($"helper:{e.Helper}", true),
        RunEvent.DishAdded e => ($"added:{e.Dish.Id}", false),
        RunEvent.DishDropped e => ($"dish:{e.Dish}", false),
        RunEvent.DishBroughtBack e => ($"dish:{e.Dish}", true),
        RunEvent.TableMoved e => ($"table:{e.Course}:{TablesBefore(e.Course).Length}", false),
        RunEvent.TableMovedBack e => ($"table:{e.Course}:{TablesBefore(e.Course).Length - 1}", true),
        RunEvent.OvenBehind e => ($"oven:{e.Oven}", false),
        RunEvent.OvenCaughtUp e => ($"oven:{e.Oven}", true),
        _ => null,
    };
}

/// <summary>Why a new plan is asked for, though table time has not slipped.</summary>
/// <param name="Since">The event that began it.</param>
/// <param name="IsEarly">Only that something was ready early: a new plan is worth telling when it serves sooner.</param>
public sealed record PlanWish(long Since, bool IsEarly);
