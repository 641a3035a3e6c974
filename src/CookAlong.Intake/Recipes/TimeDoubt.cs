namespace CookAlong.Intake.Recipes;

/// <summary>Times of one recipe that cannot all be true. All minutes.</summary>
public abstract record TimeDoubt
{
    /// <summary>Its own parts are longer than its own whole.</summary>
    public sealed record PartsBeyondTotal(int Prep, int Cook, int Total) : TimeDoubt;

    /// <summary>Its steps one after the other, each at its shortest, are longer than its whole.</summary>
    public sealed record StepsBeyondTotal(int Steps, int Total) : TimeDoubt;

    /// <summary>Its steps have more heat in them than it says, or less though each names a time.</summary>
    public sealed record HeatIsOther(int Least, int Most, int Cook) : TimeDoubt;

    /// <summary>A step's own sum ("40 minutes in all") is not that of its parts.</summary>
    public sealed record SumOfStep(string Step, int Parts, int Total) : TimeDoubt;

    /// <summary>What rounds differently is not in doubt: a quarter of the time, and five minutes at the least; own estimate.</summary>
    static double Tolerance(double minutes) => Math.Max(5, minutes / 4);

    public static IEnumerable<TimeDoubt> Of(StatedTimes stated, IReadOnlyList<StepDraft> steps)
    {
        if (stated is { Prep: { } prep, Cook: { } cook, Total: { } total } && prep.Least + cook.Least > total.Most + 1)
        {
            yield return new PartsBeyondTotal(Whole(prep.Least), Whole(cook.Least), Whole(total.Most));
        }

        if (stated.Total is { } whole && Shortest(steps) is var least && least > whole.Most + Tolerance(whole.Most))
        {
            yield return new StepsBeyondTotal(least, Whole(whole.Most));
        }

        List<StepDraft> heat = [.. steps.Where(step => step.On is CookedOn.Oven or CookedOn.Ring or CookedOn.Grill && !step.IsGuessed)];
        if (stated.Cook is { } cooking && heat.Count > 0
            && (heat.Max(step => step.Least) > cooking.Most + Tolerance(cooking.Most)
                || (steps.All(step => !step.IsGuessed) && heat.Sum(step => step.Most) < cooking.Least - Tolerance(cooking.Least))))
        {
            yield return new HeatIsOther(heat.Max(step => step.Least), heat.Sum(step => step.Most), Whole(cooking.Likely));
        }

        foreach (var step in steps)
        {
            List<TimeRead> parts = [.. step.Read.Times.Where(time => time.Role == TimeRole.Takes)], sums = [.. step.Read.Times.Where(time => time.Role == TimeRole.Total)];
            // One part beside a sum is that of one round of several; two or more are the whole.
            if (step.ByWeight is null && sums is [var sum] && parts.Count > 1 && (parts.Sum(part => part.Least) > sum.Most + 1 || parts.Sum(part => part.Most) < sum.Least - 1))
            {
                yield return new SumOfStep(step.Text, Whole(parts.Sum(part => part.Least)), Whole(sum.Most));
            }
        }
    }

    /// <summary>Along the longest way from the first step to the last, of what names a time.</summary>
    static int Shortest(IReadOnlyList<StepDraft> steps)
    {
        var waits = Overlaps.WaitsFor(steps);
        var ends = new int[steps.Count];
        for (var i = 0; i < steps.Count; i++)
        {
            ends[i] = waits[i].Select(before => ends[before]).DefaultIfEmpty(0).Max() + (steps[i].IsGuessed ? 0 : steps[i].Least);
        }

        return ends.DefaultIfEmpty(0).Max();
    }

    static int Whole(double minutes) => (int)Math.Round(minutes, MidpointRounding.AwayFromZero);
}
