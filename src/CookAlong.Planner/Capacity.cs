using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>
/// Something there is so much of at once. What has begun is cut to what there is, so that a kitchen that broke a rule
/// already can still be planned on.
/// </summary>
internal sealed class Capacity(MealModel model, int most)
{
    private readonly List<(IntervalVar Interval, int Amount)> takes = [];
    private readonly List<(int Start, int End, int Amount)> taken = [];

    public void Take(IntervalVar interval, int amount)
    {
        if (amount > 0)
        {
            takes.Add((interval, amount));
        }
    }

    /// <summary>Fixed, in minutes of the clock.</summary>
    public void Taken((int Start, int End) span, int amount)
    {
        var start = Math.Max(span.Start, model.Clock.Earliest);
        if (amount > 0 && start < span.End)
        {
            taken.Add((start, span.End, amount));
        }
    }

    public void Close()
    {
        if (takes.Count == 0)
        {
            return;
        }

        var limit = model.Cp.AddCumulative(most);
        foreach (var (interval, amount) in takes)
        {
            limit.AddDemand(interval, amount);
        }

        var cuts = taken.SelectMany(span => new[] { span.Start, span.End }).Distinct().Order().ToList();
        foreach (var (start, end) in cuts.Zip(cuts.Skip(1)))
        {
            var amount = Math.Min(most, taken.Where(span => span.Start <= start && end <= span.End).Sum(span => span.Amount));
            if (amount > 0)
            {
                limit.AddDemand(model.Cp.NewFixedSizeIntervalVar(start, end - start, "taken"), amount);
            }
        }
    }
}
