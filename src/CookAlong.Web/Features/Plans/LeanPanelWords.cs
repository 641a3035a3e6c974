using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>The leans, and what leaning cost, in sentences for the plan page and the terminal alike.</summary>
public static class LeanPanelWords
{
    /// <summary>In the order of the switches.</summary>
    public static IReadOnlyList<(Leans Lean, string Words)> All { get; } =
    [
        (Leans.StartLater, "Start later"),
        (Leans.CalmEnd, "Calmer last half hour"),
        (Leans.FewerDialTurns, "Fewer dial changes"),
        (Leans.WashUp, "Finish washing up as we go"),
    ];

    /// <summary>"start later, fewer dial changes"; null when the plan stands straight.</summary>
    public static string? Named(Leans leans) => leans == Leans.None
        ? null
        : string.Join(", ", All.Where(one => leans.HasFlag(one.Lean)).Select(one => char.ToLowerInvariant(one.Words[0]) + one.Words[1..]));

    /// <summary>What the new plan has more or less of than the one before, dearest first.</summary>
    public static IEnumerable<string> Compared(Meal meal, Plan before, Plan made)
    {
        var (was, now) = (new PlanMeasures(meal, before), new PlanMeasures(meal, made));
        yield return made.Cost.LateMinutes == before.Cost.LateMinutes
            ? made.Cost.LateMinutes == 0 ? "On time, as before." : $"{Minutes(made.Cost.LateMinutes)} late, as before."
            : $"The table is {Minutes(Math.Abs(made.Cost.LateMinutes - before.Cost.LateMinutes))} {(made.Cost.LateMinutes > before.Cost.LateMinutes ? "later" : "sooner")}.";
        var day = now.KitchenDay - was.KitchenDay;
        yield return day == 0 ? "The day in the kitchen begins when it did." : $"The day in the kitchen begins {Minutes(Math.Abs(day))} {(day > 0 ? "earlier" : "later")}.";
        yield return $"Hands-on work in the last half hour: {Change(HandsOn(meal, was), HandsOn(meal, now), " min")}.";
        yield return $"Turns of the dial from one heat to another: {Change(was.DialTurns, now.DialTurns, "")}.";
        yield return $"Waiting beyond what the food likes, the worse minutes counted more: {Change(before.Cost.Waiting, made.Cost.Waiting, " min")}.";
        if (PlanHeadline.MayBeChance(before, made) is { } chance)
        {
            yield return chance;
        }
    }

    /// <summary>"Maren 2 h 22 min, Ivo 2 h 8 min, Tobi 35 min".</summary>
    public static string Shares(Meal meal, Plan plan) =>
        string.Join(", ", new PlanMeasures(meal, plan).Shares.Select(share => $"{share.Helper.Name} {PlanHeadline.Minutes(share.Minutes)}"));

    static int HandsOn(Meal meal, PlanMeasures measures) => meal.Courses.Sum(course => measures.HandsOn(course.Id, 30));

    static string Change(long was, long now, string unit) => was == now ? $"{now}{unit}, as before" : $"{now}{unit} instead of {was}";

    static string Minutes(int minutes) => PlanHeadline.Minutes(minutes);
}
