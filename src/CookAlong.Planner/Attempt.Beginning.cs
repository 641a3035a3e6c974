using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner;

/// <content>Where it begins: what the quick search has, and how late the meal must be.</content>
internal sealed partial class Attempt
{
    /// <summary>Layouts of the quick search for a plan before the solver begins; of a running kitchen, which waits for an answer, so many again for a better one.</summary>
    private const int QuickLayouts = 500;

    /// <summary>Before a meal runs: layouts for a better one, few and soon.</summary>
    private const int QuickFew = 200;

    /// <summary>Where it is late, which prices of hands and ovens say nothing of, layouts for a better one.</summary>
    private const int QuickMore = 1300;

    /// <summary>And those of a larger population: the solver gets little further from a bad beginning in what time there is. Where the effort is counted, for each unit of it up to one.</summary>
    private const int QuickBred = 12_000;

    /// <summary>Layouts after the last better one that are enough.</summary>
    private const int QuickInVain = 1000;

    /// <summary>Before a meal runs: of the time for the whole search, the most that prices of its hands and ovens may take.</summary>
    private const double RelaxedPart = 0.25;

    /// <summary>Of the time for the whole search, the most that the quick one may take.</summary>
    private const double QuickPart = 0.4;

    /// <summary>Before a meal runs: of each second beyond the first, what more breeding may take; where the effort is counted, its layouts.</summary>
    private const double BreedingPart = 0.5;

    private const int BreedingLayouts = 7000;

    /// <summary>More is no use to any meal.</summary>
    private const int MostLayouts = 2_000_000;

    /// <summary>Of the time left, the most that finding the least lateness may take.</summary>
    private const double SoonestPart = 0.6;

    /// <summary>While a meal runs everybody waits for the answer.</summary>
    private static readonly TimeSpan SoonestWhileCooking = TimeSpan.FromMilliseconds(240);

    /// <summary>Layouts in a second.</summary>
    private double pace;

    /// <summary>A plan within a few hundredths of a second, to show and to begin from; null where that finds none.</summary>
    private QuickSearch? LookQuickly()
    {
        var begun = search.Elapsed;
        if (QuickSearch.Of(meal, clock, told, search.Prices, search.Limits.Seed, so, search.Limits.Workers) is not { } quick)
        {
            return null;
        }

        bool IsEnough() => IsOver(begun + (search.Limits.Time * QuickPart))
            || (quick.Found is not null && quick.Layouts - quick.FoundAfter > QuickInVain);
        void Tell()
        {
            search.Tell(quick);
            if (so is null && search.Whole is null)
            {
                // The first is drawn at once: who reads it does not wait for a better one.
                Offer(quick);
            }
        }

        quick.Run(QuickLayouts, so is null ? QuickFew : QuickLayouts, IsEnough, Tell);
        if (quick.Found is null)
        {
            return null;
        }

        if (so is null && quick.Late > 0)
        {
            quick.Run(QuickLayouts, QuickMore, IsEnough, Tell);
            pace = quick.Layouts / (search.Elapsed - begun).TotalSeconds;
            BreedOn(quick, begun);
        }
        else if (so is null)
        {
            pace = quick.Layouts / (search.Elapsed - begun).TotalSeconds;
            var until = begun + (search.Limits.Time * RelaxedPart);
            quick.Relax(QuickSearch.RelaxedRounds, () => IsOver(until), Tell);
        }

        if (Finish(quick, quick.Bound) is not { } plan)
        {
            search.Forget();
            return null;
        }

        if (plan.Cost.Objective < Offered)
        {
            Offer(plan);
        }

        return quick;
    }

    /// <summary>Somebody has stopped it, or it is later than that; where the effort is counted, only the first.</summary>
    private bool IsOver(TimeSpan until) => search.IsStopped || (search.Limits.Deterministic is null && search.Elapsed > until);

    /// <summary>
    /// With time to spare the breeding goes on where a plan is far from proof, and larger populations are bred where a meal is
    /// late: the solver gets less far with that time, above all for a single cook.
    /// </summary>
    /// <param name="since">The quick search's part of the time is counted from then.</param>
    private void BreedOn(QuickSearch quick, TimeSpan since)
    {
        Breed(quick, quick.BreedOn, (int)(Math.Min(search.Limits.Deterministic ?? 1, 1) * QuickBred), since + (search.Limits.Time * QuickPart));
        Breed(
            quick,
            quick.Late > 0 ? quick.BreedOn : quick.GoOn,
            search.Limits.Deterministic is { } effort ? (int)(Math.Max(0, effort - 1) * BreedingLayouts) : MostLayouts,
            search.Elapsed + ((search.Limits.Time - TimeSpan.FromSeconds(1)) * BreedingPart));
    }

    /// <param name="until">Where time counts, no later: so many layouts as there is time for.</param>
    private void Breed(QuickSearch quick, Action<int, Func<bool>, Action?> breed, int layouts, TimeSpan until)
    {
        var isTimed = search.Limits.Deterministic is null;
        var (begun, before) = (search.Elapsed, quick.Layouts);
        breed(
            isTimed ? (int)Math.Clamp(pace * (until - begun).TotalSeconds, 0, layouts) : layouts,
            () => IsOver(until),
            () => search.Tell(quick));
        pace = quick.Layouts > before ? (quick.Layouts - before) / (search.Elapsed - begun).TotalSeconds : pace;
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

        // Where the effort is counted it ends the search, and the clock only what has gone astray.
        var part = search.Left * SoonestPart;
        var time = so is null || search.Limits.Deterministic is not null || part < SoonestWhileCooking ? part : SoonestWhileCooking;
        var sooner = search.Solve(model, time, time * giveUp, share);
        return quick is not null && sooner.IsImpossible ? new Answer(quick, late, late, IsImpossible: false) : sooner;
    }

    /// <summary>Of all courses together, in minutes.</summary>
    private int LateOf(Draft draft) => meal.Courses.Sum(course => draft.Tables[course.Id] - clock.Of(course.TableTime));
}
