using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner;

/// <param name="IsImpossible">Proven that this span of the clock has no plan.</param>
internal readonly record struct Tried(Plan? Plan, bool IsImpossible);

/// <summary>
/// One go at a meal within one span of the clock. People are first only counted, which is quick; then names are put to the
/// settled times; where those clash the starts may move a little, and where that fails too, names and times are found together.
/// </summary>
internal sealed partial class Attempt(Meal meal, Clock clock, SoFar? so, Told? told, Search search)
{
    /// <summary>Time worth going back to the whole for.</summary>
    private static readonly TimeSpan MendTime = TimeSpan.FromMilliseconds(200);

    /// <summary>After this part of the time, and after what proves the meals that can be, the solver gives way where it is still so far from proof.</summary>
    private const double GiveWayPart = 0.15;

    private const double GiveWayGap = 0.08;

    /// <summary>The same where hands are not short: there it proves most, if it is let.</summary>
    private const double GiveWayFar = 0.35;

    private static readonly TimeSpan GiveWayNoSooner = TimeSpan.FromMilliseconds(400);

    /// <summary>Of a deterministic limit, what finding the least lateness and, once a meal is known to be on time, the best such plan may take.</summary>
    private const double OnTimeShare = 0.6;

    /// <param name="share">Of a deterministic limit.</param>
    /// <param name="giveUp">Share of the time left after which an attempt that has found nothing ends.</param>
    public Tried Run(double share, double giveUp)
    {
        var quick = search.IsStopped ? null : LookQuickly();
        if (search.IsStopped)
        {
            return new Tried(quick is null ? null : Finish(quick, quick.Bound), false);
        }

        if (so is not null)
        {
            return quick is { Late: > 0 } ? Sooner(quick, share, giveUp) : Solve(quick, null, share, giveUp);
        }

        if (clock.MostLate == 0)
        {
            return Solve(quick, null, share, giveUp);
        }

        if (quick is { Late: 0 })
        {
            return OnTime.Solve(quick, null, share * OnTimeShare, giveUp);
        }

        var soonest = Soonest(quick?.Draft(), share * OnTimeShare, giveUp);
        var rest = share * (1 - OnTimeShare);
        if (soonest.IsImpossible)
        {
            return new Tried(null, true);
        }

        // What is on time in counts of hands may have no names; then something late is better than nothing.
        return soonest.Found is { } found && LateOf(found) == 0 && OnTime.Solve(null, soonest, rest, giveUp) is { Plan: not null } onTime
            ? onTime
            : Solve(quick, soonest, rest, giveUp);
    }

    private Attempt OnTime => new(meal, clock with { MostLate = 0 }, so, told, search) { pace = pace };

    private Tried Solve(QuickSearch? quick, Answer? soonest, double share, double giveUp)
    {
        var relaxed = so is null && clock.MostLate == 0 ? quick?.Bound ?? 0 : 0;
        var counts = Counting(soonest?.Bound ?? 0, relaxed, share);
        var begin = Begin(counts, quick, soonest?.Found);

        // With a plan in hand there is nothing else to look for time for.
        var soon = so is null || search.Limits.Deterministic is not null ? null : AnswerSoon(counts, quick, begin);
        var counted = soon is { IsProven: true } ? soon : Counted(counts, quick, share, quick is null && soonest?.Found is null ? giveUp : 1);
        counted = counted with { Bound = Math.Max(counted.Bound, relaxed) };

        // Finding the beginning may have taken all the time.
        return Whole(counts, counted.Found is null && begin is not null ? begin.Or(counted) : counted, quick, share, giveUp);
    }

    /// <summary>The whole meal, its people counted only, with what is known of its price before it is solved.</summary>
    private MealModel Counting(long late, long relaxed, double share)
    {
        var counts = new MealModel(meal, clock, so, told, PeopleBy.Counts, search.Prices);
        counts.LateAtLeast(late);
        if (so is null && clock.MostLate == 0 && OvenAlone.Of(meal) is { } alone)
        {
            // While a meal runs there is no time for it, and what it would be late by has no price in the small model.
            var oven = new MealModel(alone, clock, null, null, PeopleBy.Counts, search.Prices);
            counts.AtLeast(search.LeastOf(oven, search.Left * OvenAlone.Part, share * OvenAlone.Part), oven);
        }

        counts.AtLeast(relaxed);
        return counts;
    }

    /// <summary>Hints what is known of a plan; as an answer where that is a whole one.</summary>
    private Answer? Begin(MealModel counts, QuickSearch? quick, Draft? sooner)
    {
        if ((sooner ?? quick?.Draft()) is { } draft)
        {
            Hints.FromDraft(counts, draft);
            var begin = search.CompleteHint(counts);
            if (quick is null || sooner is null || begin?.Objective < quick.Cost)
            {
                return begin;
            }

            // Less late, but dearer for it.
            counts.Cp.ClearHints();
            Hints.FromDraft(counts, quick.Draft());
            return search.CompleteHint(counts);
        }

        if (so is not null)
        {
            Hints.FromPlan(counts, so);
        }
        else if (told is not null)
        {
            Hints.FromTold(counts, told);
        }

        return null;
    }

    /// <summary>The cheapest plan with names that comes of what was counted, or the quick search's where that is no dearer.</summary>
    private Tried Whole(MealModel counts, Answer counted, QuickSearch? quick, double share, double giveUp)
    {
        if (counted.Found is not { } draft)
        {
            return new Tried(quick is null ? null : Finish(quick, counted.Bound), counted.IsImpossible);
        }

        if (quick is not null && quick.Cost <= counted.Objective && Finish(quick, counted.Bound) is { } better)
        {
            return new Tried(better, false);
        }

        if (Finish(counts, counted, counted.Bound) is { } whole)
        {
            return new Tried(whole, false);
        }

        if (search.IsStopped && quick is not null)
        {
            return new Tried(Finish(quick, counted.Bound), false);
        }

        var named = Named(draft, counted.Bound, share * 0.25, giveUp);
        return quick is not null && (named.Plan is not { } plan || quick.Cost < plan.Cost.Objective)
            ? new Tried(Finish(quick, counted.Bound), false)
            : named;
    }

    /// <summary>The whole at once; where that stays far from proof a better beginning, and a few steps at a time; then the whole again from there.</summary>
    private Answer Counted(MealModel counts, QuickSearch? quick, double share, double giveUp)
    {
        var isTimed = search.Limits.Deterministic is null;
        var after = search.Limits.Time * GiveWayPart;
        (TimeSpan, double)? giveWay = isTimed ? (after > GiveWayNoSooner ? after : GiveWayNoSooner, quick is { Bound: > 0 } ? GiveWayGap : GiveWayFar) : null;
        var first = search.Solve(counts, search.Limits.Time, search.Left * giveUp, share * 0.5, giveWay: giveWay, proves: true);
        if (so is null && quick is { Late: 0 } && Neighbourhoods.IsFarFromProof(first))
        {
            BreedOn(quick, search.Elapsed);
            first = Bred(counts, quick, first);
        }

        var neighbours = new Neighbourhoods(search, near => new MealModel(meal, clock, so, told, PeopleBy.Counts, search.Prices, near));
        var improved = neighbours.Improve(counts, first, share);
        if (improved.Found is not { } draft || !isTimed || improved.Objective <= improved.Bound || search.Left <= MendTime)
        {
            return improved;
        }

        Hints.All(counts, draft.Values);
        return improved.Or(search.Solve(counts, search.Left - MendTime, search.Left - MendTime, share, proves: true));
    }

    /// <summary>The quick search's plan in the solver's unknowns, where it is the cheaper one.</summary>
    private Answer Bred(MealModel counts, QuickSearch quick, Answer answer)
    {
        if (quick.Cost >= (answer.Found is null ? long.MaxValue : answer.Objective))
        {
            return answer;
        }

        counts.Cp.ClearHints();
        Hints.FromDraft(counts, quick.Draft());
        return search.CompleteHint(counts) is { } bred ? bred.Or(answer) : answer;
    }
}
