using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;

namespace CookAlong.Planner;

/// <content>Nobody waits for the best. While a meal runs each better plan is told as it is found, whole and checked; before that the first, to look at meanwhile.</content>
internal sealed partial class Attempt
{
    /// <summary>Layouts of the quick search from what the solver found to be less late: it looked at nothing else that costs, and comes down from there more slowly.</summary>
    private const int QuickSooner = 8000;

    /// <summary>Of those, after the last better one, that are enough.</summary>
    private const int QuickSoonerInVain = 2500;

    /// <summary>Layouts near times that nobody can be named for: hands are only counted there.</summary>
    private const int QuickMended = 600;

    /// <summary>While a meal runs: of a deterministic limit, what finding less lateness may take.</summary>
    private const double CookingPart = 0.3;

    /// <summary>How long the solver looks at first, and then once more from what it has: tried, with 20 moments of the demo, against one go and against three to six.</summary>
    private static readonly TimeSpan[] Soon = [TimeSpan.FromMilliseconds(120), TimeSpan.FromMilliseconds(780)];

    /// <summary>The most that going on from what is less late may take, and that making a plan of what has no names may, whatever the size of the meal.</summary>
    private static readonly TimeSpan GoOnTime = TimeSpan.FromMilliseconds(200);

    private static readonly TimeSpan NamelessTime = TimeSpan.FromMilliseconds(40);

    /// <summary>Nobody reads faster, and each is checked.</summary>
    private static readonly TimeSpan BetweenOffers = TimeSpan.FromMilliseconds(30);

    private TimeSpan nextOffer;

    /// <summary>What the cheapest plan told of costs.</summary>
    private long Offered => search.Whole?.Cost.Objective ?? long.MaxValue;

    /// <summary>Of a running meal that is late: how late it must be, and then what else it costs.</summary>
    private Tried Sooner(QuickSearch quick, double share, double giveUp)
    {
        // What has begun may be beyond its limits, which has a price here too: it bounds nothing else.
        var first = quick.Draft();
        var soonest = Soonest(first, share * CookingPart, 1) with { Bound = 0 };
        if (soonest.Found is { } sooner && LateOf(sooner) < LateOf(first))
        {
            GoOnFrom(sooner, quick, QuickSooner, GoOnTime);
            soonest = LateOf(quick.Draft()) == LateOf(sooner) ? soonest with { Found = null } : soonest;
        }

        return Solve(quick, soonest, share * (1 - CookingPart), giveUp);
    }

    private void GoOnFrom(Draft draft, QuickSearch quick, int layouts, TimeSpan time)
    {
        var (until, begun) = (search.Elapsed + time, quick.Layouts);
        bool IsEnough() => IsOver(until) || quick.Layouts - Math.Max(begun, quick.FoundAfter) > QuickSoonerInVain;
        void Tell()
        {
            // Where the effort is counted, what comes of it must not hang on the clock: then the last alone.
            search.Tell(quick);
            if (search.Limits.Deterministic is null && search.Elapsed >= nextOffer)
            {
                Offer(quick);
            }
        }

        quick.GoOnFrom(draft, layouts, IsEnough, Tell);
        Offer(quick);
    }

    private Answer? AnswerSoon(MealModel counts, QuickSearch? quick, Answer? begin)
    {
        Answer? best = null;
        var nameless = long.MaxValue;
        void Tell(Answer answer)
        {
            if (answer.Objective >= Math.Min(Offered, nameless))
            {
                return;
            }

            if (Finish(counts, answer, answer.Bound) is { } whole)
            {
                Offer(whole);
                return;
            }

            nameless = answer.Objective;
            if (quick is not null)
            {
                GoOnFrom(answer.Found!, quick, QuickMended, NamelessTime);
            }
        }

        if (begin is not null)
        {
            Tell(begin);
        }

        foreach (var moment in Soon)
        {
            var soon = search.Solve(counts, moment, moment, share: 1, found: Tell);
            if (soon.Found is null || soon.Objective >= (best?.Objective ?? quick?.Cost ?? long.MaxValue))
            {
                best = best is not null && soon.Found is not null ? best.Or(soon) : best;
                continue;
            }

            best = soon;
            Tell(soon);

            if (soon.IsProven)
            {
                break;
            }

            Hints.All(counts, soon.Found.Values);
        }

        return best;
    }

    private void Offer(QuickSearch quick)
    {
        if (quick.Cost < Offered && Finish(quick, bound: 0) is { } plan)
        {
            Offer(plan);
        }
    }

    private void Offer(Plan plan)
    {
        search.Tell(plan, so is null ? told?.PriceOf(plan) ?? 0 : 0);
        nextOffer = search.Elapsed + BetweenOffers;
    }
}
