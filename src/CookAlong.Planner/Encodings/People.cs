using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>OneJobEach: nobody is in two hands-on steps or tends at once.</summary>
internal static class People
{
    /// <summary>More groups of helpers than this add little to the bound and much to the model.</summary>
    private const int MostGroups = 16;

    /// <summary>With fewer minutes than these to finish dishes for each pair of hands, that bounds little, and the search is the slower for it.</summary>
    private const int FinishMinutes = 15;

    public static void Add(MealModel model, PeopleBy people)
    {
        if (people == PeopleBy.Counts)
        {
            foreach (var group in Groups(model.Jobs))
            {
                Count(model, group);
            }

            Finish(model);
        }
        else
        {
            Name(model);
        }
    }

    /// <summary>
    /// For a group of helpers, the jobs that nobody outside it may do never take more hands than it has. Necessary for
    /// names to exist, not sufficient: naming finds out.
    /// </summary>
    private static void Count(MealModel model, HashSet<int> group)
    {
        var hands = new Capacity(model, group.Count);
        foreach (var job in model.Jobs.Where(job => group.IsSupersetOf(job.Able)))
        {
            hands.Take(job.Interval, job.Count);
        }

        foreach (var helper in group)
        {
            Block(model, helper, hands);
        }

        hands.Close();
    }

    /// <summary>
    /// Dishes are finished by so many hands, so all but a few of them wait for the table. Follows from the jobs' own limit, but what
    /// a dish's waiting costs hangs on its end, and the solver sees no bound on the one in a limit on the others.
    /// </summary>
    private static void Finish(MealModel model)
    {
        var finishes = model.HoldsOf.Select(hold => hold.Finish).OfType<FinishVariables>().ToList();
        var count = model.Jobs.SelectMany(job => job.Able).Distinct().Count();
        if (finishes.Sum(finish => finish.Minutes) < count * FinishMinutes)
        {
            return;
        }

        var hands = new Capacity(model, count);
        foreach (var finish in finishes)
        {
            hands.Take(model.Cp.NewFixedSizeIntervalVar(finish.From, finish.Minutes, "finished"), 1);
        }

        hands.Close();
    }

    private static void Name(MealModel model)
    {
        var perHelper = model.Meal.Helpers.Select(_ => new Capacity(model, 1)).ToList();
        foreach (var job in model.Jobs)
        {
            var names = job.Able.Select(helper => (Helper: helper, Does: model.Cp.NewBoolVar($"{job.Step.Id} by {helper}"))).ToList();
            model.Cp.Add(LinearExpr.Sum(names.Select(name => name.Does)) == job.Count).OnlyEnforceIf(job.Taken);
            foreach (var (helper, does) in names)
            {
                model.Cp.AddImplication(does, job.Taken);
                var interval = model.Cp.NewOptionalFixedSizeIntervalVar(job.Start, job.Minutes, does, $"{job.Step.Id} by {helper}");
                perHelper[helper].Take(interval, 1);
                var available = model.Meal.Helpers[helper].Available;
                if (!available.IsEmpty)
                {
                    var spans = available.Select(window => (model.Clock.Of(window.From), model.Clock.Of(window.To)));
                    model.Within(job.Start, Spans.StartsOf(spans, job.Minutes), does);
                }
            }
        }

        for (var helper = 0; helper < perHelper.Count; helper++)
        {
            Block(model, helper, perHelper[helper]);
            perHelper[helper].Close();
        }
    }

    /// <summary>When the helper is away, or busy with what has begun.</summary>
    private static void Block(MealModel model, int index, Capacity hands)
    {
        var helper = model.Meal.Helpers[index];
        var windows = helper.Available.Select(window => (model.Clock.Of(window.From), model.Clock.Of(window.To)));
        var away = helper.Available.IsEmpty ? [] : Spans.Without(windows, (0, model.End));
        foreach (var span in Spans.Joined(Busy(model, index).Concat(away)))
        {
            hands.Taken(span, 1);
        }
    }

    /// <summary>When the helper is at what has begun.</summary>
    public static IEnumerable<(int Start, int End)> Busy(MealModel model, int helper) =>
        model.Steps.Values
            .Where(step => step.HasBegun && step.Ways[0].Way.Attention == Attention.HandsOn
                && model.So!.Current.Step(step.Step.Id).Helpers.Contains(model.Meal.Helpers[helper].Id))
            .Select(step => Places.Begun(model, step));

    /// <summary>The sets of helpers that some job asks for, and what they make together.</summary>
    private static List<HashSet<int>> Groups(List<Job> jobs)
    {
        var groups = new List<HashSet<int>>();
        foreach (var job in jobs)
        {
            AddNew(groups, [.. job.Able]);
        }

        for (var one = 0; one < groups.Count && groups.Count < MostGroups; one++)
        {
            for (var other = 0; other < one && groups.Count < MostGroups; other++)
            {
                AddNew(groups, [.. groups[one], .. groups[other]]);
            }
        }

        AddNew(groups, [.. groups.SelectMany(group => group)]);
        return groups;
    }

    private static void AddNew(List<HashSet<int>> groups, HashSet<int> group)
    {
        if (!groups.Any(known => known.SetEquals(group)))
        {
            groups.Add(group);
        }
    }
}
