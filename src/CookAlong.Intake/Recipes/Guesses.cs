namespace CookAlong.Intake.Recipes;

/// <summary>Steps that name no time, where the recipe says how long the whole takes: the rest of it is theirs. Still a guess, and marked as one.</summary>
static class Guesses
{
    public static void Better(IReadOnlyList<StepDraft> steps, StatedTimes stated)
    {
        List<StepDraft> onHeat = [.. steps.Where(step => step.IsGuessed && IsHeat(step.Read.On))];
        var heat = steps.Where(step => !step.IsGuessed && IsHeat(step.On)).Sum(step => step.Likely);
        // Of two steps on the heat nobody can say which takes how much of it.
        if (stated.Cook is { } cook && onHeat is [var one] && cook.Likely - heat >= 1)
        {
            one.TakesOfTheWhole(cook.Likely - heat, one.Read.On);
        }

        List<StepDraft> byHand = [.. steps.Where(step => step.IsGuessed && !IsHeat(step.Read.On))];
        var hands = steps.Where(step => !step.IsGuessed && step.Attention == Domain.Meals.Attention.HandsOn && !IsHeat(step.On)).Sum(step => step.Likely);
        if (stated.Prep is { } prep && byHand.Count > 0 && (prep.Likely - hands) / byHand.Count >= 1)
        {
            foreach (var step in byHand)
            {
                step.TakesOfTheWhole((prep.Likely - hands) / byHand.Count, CookedOn.Nothing);
            }
        }
    }

    static bool IsHeat(CookedOn on) => on is CookedOn.Oven or CookedOn.Ring or CookedOn.Grill;
}
