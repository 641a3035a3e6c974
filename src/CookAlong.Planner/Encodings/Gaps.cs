namespace CookAlong.Planner.Encodings;

/// <summary>Gaps: a step starts no sooner and no later after the steps it waits for than the gaps allow.</summary>
internal static class Gaps
{
    public static void Add(MealModel model)
    {
        foreach (var step in model.Steps.Values.Where(step => !step.HasBegun))
        {
            foreach (var after in step.Step.After)
            {
                var before = model.Steps[after.Step];
                model.Cp.Add(step.Start - before.End >= after.Least);
                if (after.Most is not { } most)
                {
                    continue;
                }

                if (before.HasBegun)
                {
                    // What it waits for cannot be moved any more: too late is dear, not impossible.
                    var over = model.Cp.NewIntVar(0, model.End + 1, "gap beyond its limit");
                    model.Cp.Add(step.Start - before.End <= most + over);
                    model.Charge(over, Prices.BeyondLimitMinute);
                }
                else
                {
                    model.Cp.Add(step.Start - before.End <= most);
                }
            }
        }
    }
}
