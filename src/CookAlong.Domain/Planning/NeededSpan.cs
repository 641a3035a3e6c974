using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>From when to when a plan needs something extra.</summary>
public static class NeededSpan
{
    readonly record struct Job(Minute Start, Minute End, Func<Helper, bool> MayBeDoneBy, ImmutableArray<HelperId> Beside);

    /// <summary>
    /// When a pair of hands is needed, once whoever else is free at either end has taken over what they can. Null when nobody
    /// would miss it.
    /// </summary>
    public static Window? Of(Meal meal, Plan plan, HelperId extra)
    {
        var (jobs, busy) = Jobs(meal, plan, extra);
        var others = meal.Helpers.Where(helper => helper.Id != extra).ToArray();
        bool IsSpared(Job job)
        {
            if (others.FirstOrDefault(helper => helper.IsHere(job.Start, job.End) && !job.Beside.Contains(helper.Id) && job.MayBeDoneBy(helper)
                && !busy[helper.Id].Any(span => span.From < job.End && job.Start < span.To)) is not { } free)
            {
                return false;
            }

            busy[free.Id].Add(new Window(job.Start, job.End));
            return true;
        }

        // From both ends, for what matters is how long somebody must be asked to come.
        var kept = jobs.OrderBy(job => job.Start).SkipWhile(IsSpared).OrderByDescending(job => job.End).SkipWhile(IsSpared).ToArray();
        Window[] spans = [.. kept.Select(job => new Window(job.Start, job.End)), .. Watched(meal, plan, others)];
        return spans.Length == 0 ? null : new Window(spans.Min(span => span.From), spans.Max(span => span.To));
    }

    /// <summary>When an oven is on or in use; null when it stays cold.</summary>
    public static Window? Of(Plan plan, OvenId oven)
    {
        Window[] spans =
        [
            .. plan.Steps.Where(step => step.Oven == oven).Select(step => new Window(step.Start, step.End)),
            .. plan.Holds.Where(hold => hold.Oven == oven).Select(hold => new Window(hold.From, hold.To)),
        ];
        if (spans.Length == 0)
        {
            return null;
        }

        var turned = plan.Ovens.Where(one => one.Oven == oven).SelectMany(one => one.Dial).Where(dial => dial.Celsius > 0).Select(dial => dial.At);
        return new Window(spans.Select(span => span.From).Concat(turned).Min(), spans.Max(span => span.To));
    }

    /// <summary>When its first step begins, or an oven for it is turned on.</summary>
    public static Minute From(Plan plan) =>
        plan.Steps.Select(step => step.Start).Concat(plan.Ovens.SelectMany(oven => oven.Dial).Select(dial => dial.At)).Min();

    /// <summary>What cooks while no other grown-up is here.</summary>
    static IEnumerable<Window> Watched(Meal meal, Plan plan, IEnumerable<Helper> others)
    {
        var grownUps = Presence.OfAny(others.Where(helper => !helper.IsChild));
        return plan.Steps
            .Where(step => meal.Step(step.Step).WayOf(step.Option).Attention == Attention.Nearby && grownUps.FirstGap(step.Start, step.End) is not null)
            .Select(step => new Window(step.Start, step.End));
    }

    static (List<Job> Jobs, Dictionary<HelperId, List<Window>> Busy) Jobs(Meal meal, Plan plan, HelperId extra)
    {
        var jobs = new List<Job>();
        var busy = meal.Helpers.ToDictionary(helper => helper.Id, _ => new List<Window>());
        void Add(Minute start, Minute end, ImmutableArray<HelperId> helpers, Func<Helper, bool> mayDo)
        {
            if (helpers.Contains(extra))
            {
                jobs.Add(new(start, end, mayDo, helpers));
            }

            foreach (var helper in helpers)
            {
                busy[helper].Add(new Window(start, end));
            }
        }

        foreach (var planned in plan.Steps)
        {
            var step = meal.Step(planned.Step);
            Add(planned.Start, planned.End, planned.Helpers, helper => helper.MayDo(step));
        }

        foreach (var planned in plan.Tends)
        {
            var step = meal.Step(planned.Step);
            Add(planned.At, planned.End, [planned.Helper], helper => helper.MayDo(step, step.Tends[planned.Tend]));
        }

        return (jobs, busy);
    }
}
