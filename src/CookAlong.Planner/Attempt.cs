using System.Collections.Immutable;
using CookAlong.Domain;
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
internal sealed class Attempt(Meal meal, Clock clock, SoFar? so, Told? told, Search search)
{
    /// <summary>How far a start may move to mend a clash of names.</summary>
    private const int MendMinutes = 15;

    /// <summary>What turning the best so far into a plan may take after the search was stopped.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(1);

    /// <summary>How long the solver looks for its first answers to a running kitchen, one after another.</summary>
    private static readonly TimeSpan[] Soon = [TimeSpan.FromMilliseconds(60), TimeSpan.FromMilliseconds(120), TimeSpan.FromMilliseconds(240), TimeSpan.FromMilliseconds(480)];

    /// <summary>Time worth going back to the whole for.</summary>
    private static readonly TimeSpan MendTime = TimeSpan.FromMilliseconds(200);

    /// <summary>Layouts of the quick search for a plan before the solver begins; of a running kitchen, which waits for an answer, so many again for a better one.</summary>
    private const int QuickLayouts = 500;

    /// <summary>Before a meal runs: layouts for a better one. The solver gets little further from a bad beginning in what time there is.</summary>
    private const int QuickMore = 6000;

    /// <summary>Layouts after the last better one that are enough.</summary>
    private const int QuickInVain = 1000;

    /// <summary>Of the time for the whole search, the most that the quick one may take.</summary>
    private const double QuickPart = 0.25;

    /// <summary>Of the time left, the most that finding the least lateness may take.</summary>
    private const double SoonestPart = 0.6;

    /// <summary>While a meal runs everybody waits for the answer.</summary>
    private static readonly TimeSpan SoonestWhileCooking = TimeSpan.FromMilliseconds(240);

    /// <summary>While a meal runs: of a deterministic limit, what finding less lateness may take.</summary>
    private const double CookingPart = 0.3;

    /// <summary>Of a deterministic limit, what finding the least lateness and, once a meal is known to be on time, the best such plan may take.</summary>
    private const double OnTimeShare = 0.6;

    /// <param name="share">Of a deterministic limit.</param>
    /// <param name="giveUp">Share of the time left after which an attempt that has found nothing ends.</param>
    public Tried Run(double share, double giveUp)
    {
        var quick = (so is not null || told is null) && !search.IsStopped ? LookQuickly() : null;
        if (search.IsStopped)
        {
            return new Tried(quick is null ? null : Finish(quick, bound: 0), false);
        }

        if (so is not null)
        {
            // What has begun may be beyond its limits, which has a price here too: it bounds nothing else.
            var late = quick is { Late: > 0 };
            var sooner = late ? Soonest(quick!.Draft(), share * CookingPart, 1) with { Bound = 0 } : null;
            return Solve(quick, sooner, late ? share * (1 - CookingPart) : share, giveUp);
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

    private Attempt OnTime => new(meal, clock with { MostLate = 0 }, so, told, search);

    private Tried Solve(QuickSearch? quick, Answer? soonest, double share, double giveUp)
    {
        var counts = new MealModel(meal, clock, so, told, PeopleBy.Counts, search.Prices);
        counts.LateAtLeast(soonest?.Bound ?? 0);
        Answer? begin = null;
        if ((soonest?.Found ?? quick?.Draft()) is { } draftSoFar)
        {
            Hints.FromDraft(counts, draftSoFar);
            begin = Search.CompleteHint(counts);
            if (quick is not null && soonest?.Found is not null && !(begin?.Objective < quick.Cost))
            {
                // Less late, but dearer for it.
                counts.Cp.ClearHints();
                Hints.FromDraft(counts, quick.Draft());
                begin = Search.CompleteHint(counts);
            }
        }
        else if (so is not null)
        {
            Hints.FromPlan(counts, so);
        }
        else if (told is not null)
        {
            Hints.FromTold(counts, told);
        }

        // With a plan in hand there is nothing else to look for time for.
        var soon = so is null || search.Limits.Deterministic is not null ? null : AnswerSoon(counts, quick);
        var counted = soon is { IsProven: true } ? soon : Counted(counts, share, quick is null && soonest?.Found is null ? giveUp : 1);
        if (counted.Found is null && begin is not null)
        {
            // Finding it took all the time.
            counted = begin.Or(counted);
        }

        if (counted.Found is not { } draft)
        {
            return new Tried(quick is null ? null : Finish(quick, counted.Bound), counted.IsImpossible);
        }

        if (quick is not null && quick.Cost <= counted.Objective)
        {
            return new Tried(Finish(quick, counted.Bound), false);
        }

        if (Naming.Of(counts, draft, search.Limits, search.Stop) is { } names && Finish(counts, draft, names, counted.Objective, counted.Bound) is { } whole)
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

    /// <summary>A running kitchen does not wait for the best: what the solver has after each of a few moments is told, and searched on from.</summary>
    private Answer? AnswerSoon(MealModel counts, QuickSearch? quick)
    {
        Answer? best = null;
        foreach (var moment in Soon)
        {
            var soon = search.Solve(counts, moment, moment, share: 1);
            if (soon.Found is not { } draft || soon.Objective >= (best?.Objective ?? quick?.Cost ?? long.MaxValue))
            {
                best = best is not null && soon.Found is not null ? best.Or(soon) : best;
                continue;
            }

            best = soon;
            if (Naming.Of(counts, draft, search.Limits, search.Stop) is { } names && Finish(counts, draft, names, soon.Objective, soon.Bound) is { } whole)
            {
                search.Tell(whole);
            }

            if (soon.IsProven)
            {
                break;
            }

            Hints.All(counts, draft.Values);
        }

        return best;
    }

    /// <summary>The whole at once; where that stays far from proof a few steps at a time; then the whole again from there.</summary>
    private Answer Counted(MealModel counts, double share, double giveUp)
    {
        var isTimed = search.Limits.Deterministic is null;
        var first = search.Solve(counts, search.Limits.Time, search.Left * giveUp, share * 0.5, giveWay: isTimed ? (0.2, 0.35) : null, proves: true);
        var neighbours = new Neighbourhoods(search, near => new MealModel(meal, clock, so, told, PeopleBy.Counts, search.Prices, near));
        var improved = neighbours.Improve(counts, first, share);
        if (improved.Found is not { } draft || !isTimed || improved.Objective <= improved.Bound || search.Left <= MendTime)
        {
            return improved;
        }

        Hints.All(counts, draft.Values);
        return improved.Or(search.Solve(counts, search.Left - MendTime, search.Left - MendTime, share, proves: true));
    }

    /// <summary>
    /// How late it must be, before all else: among the small prices of a hundred steps the large one of a minute late is found
    /// slowly. On job shops of 50 operations the search for the whole price took twenty times as long.
    /// </summary>
    private Answer Soonest(Draft? quick, double share, double giveUp)
    {
        var model = new MealModel(meal, clock, so, told, PeopleBy.Counts, search.Prices, isLatenessOnly: true);
        var late = 0L;
        if (quick is not null)
        {
            late = (long)model.LateOf(quick) * Prices.LateMinute;
            if (late == 0)
            {
                return new Answer(quick, 0, 0, IsImpossible: false);
            }

            Hints.FromDraft(model, quick);
            model.LessLateThan(late);
        }
        else if (told is not null)
        {
            Hints.FromTold(model, told);
        }

        var time = so is null || search.Left * SoonestPart < SoonestWhileCooking ? search.Left * SoonestPart : SoonestWhileCooking;
        var sooner = search.Solve(model, time, time * giveUp, share);
        return quick is not null && sooner.IsImpossible ? new Answer(quick, late, late, IsImpossible: false) : sooner;
    }

    /// <summary>Of all courses together, in minutes.</summary>
    private int LateOf(Draft draft) => meal.Courses.Sum(course => draft.Tables[course.Id] - clock.Of(course.TableTime));

    /// <summary>A plan within a few hundredths of a second, to show and to begin from; null where that finds none.</summary>
    private QuickSearch? LookQuickly()
    {
        var begun = search.Elapsed;
        if (QuickSearch.Of(meal, clock, told, search.Prices, search.Limits.Seed, so) is not { } quick)
        {
            return null;
        }

        var inVain = 0;
        bool IsOver() => search.IsStopped
            || (search.Limits.Deterministic is null && search.Elapsed - begun > search.Limits.Time * QuickPart)
            || (quick.Found is not null && ++inVain > QuickInVain);
        quick.Run(QuickLayouts, so is null ? QuickMore : QuickLayouts, IsOver, () =>
        {
            inVain = 0;
            search.Tell(quick);
        });
        if (quick.Found is null)
        {
            return null;
        }

        if (Finish(quick, bound: 0) is not { } plan)
        {
            search.Forget();
            return null;
        }

        if (so is not null)
        {
            search.Tell(plan);
        }

        return quick;
    }

    private Tried Named(Draft draft, long bound, double share, double giveUp)
    {
        var near = new Near(draft.Steps.ToDictionary(step => step.Key, step => step.Value.Start), MendMinutes);
        var mending = new MealModel(meal, clock, so, told, PeopleBy.Names, search.Prices, near);
        Hints.FromDraft(mending, draft);
        var mended = Solve(mending, 0.3, share, heedStop: false);
        if (mended.Found is not null && (mended.Objective <= bound || search.IsStopped))
        {
            return new Tried(Finish(mending, mended, bound), false);
        }

        var free = new MealModel(meal, clock, so, told, PeopleBy.Names, search.Prices);
        Hints.FromDraft(free, mended.Found ?? draft);
        if (mended.Found is null)
        {
            search.Forget();
        }

        var freed = Solve(free, mended.Found is null ? giveUp : 1, share, heedStop: mended.Found is not null);
        if (freed.Found is not null && (mended.Found is null || freed.Objective <= mended.Objective))
        {
            return new Tried(Finish(free, freed, Math.Max(bound, freed.Bound)), false);
        }

        return mended.Found is not null
            ? new Tried(Finish(mending, mended, Math.Max(bound, freed.Bound)), false)
            : new Tried(null, freed.IsImpossible);
    }

    /// <param name="part">Of the time left.</param>
    private Answer Solve(MealModel model, double part, double share, bool heedStop)
    {
        var left = search.Left * part;
        var time = heedStop || (left > Grace && !search.IsStopped) ? left : Grace;
        return search.Solve(model, time < search.Limits.Time ? time : search.Limits.Time, time, share, heedStop);
    }

    private Plan? Finish(MealModel model, Answer answer, long bound) =>
        Naming.Of(model, answer.Found!, search.Limits, search.Stop) is { } names ? Finish(model, answer.Found!, names, answer.Objective, bound) : null;

    private Plan? Finish(MealModel model, Draft draft, ImmutableArray<ImmutableArray<HelperId>> names, long objective, long bound)
    {
        var doers = draft.Jobs.Zip(names)
            .SelectMany(one => one.Second, (one, helper) => (Job: (one.First.Job.Step.Id, one.First.Job.Tend), Helper: helper))
            .ToLookup(one => one.Job, one => one.Helper);
        return Finish(PlanWriting.Write(meal, clock, so, draft, doers, search.Prices), objective, bound);
    }

    private Plan? Finish(QuickSearch quick, long bound) => Finish(quick.Plan(so), quick.Cost, bound);

    private Plan? Finish(Plan plan, long objective, long bound)
    {
        // What has begun may cost what no plan can say; then the solver's own sum stands.
        var cost = so is null ? plan.Cost.Objective : objective;
        var gap = Answer.GapOf(so is null ? cost + (told?.PriceOf(plan) ?? 0) : objective, bound);
        plan = plan with
        {
            Gap = gap,
            Status = gap == 0 ? PlanStatus.Optimal : PlanStatus.Feasible,
            Cost = plan.Cost with { Objective = cost },
        };
        return Checking.Finished(meal, plan, so, clock.At(clock.Earliest));
    }
}
