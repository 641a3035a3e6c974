using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Web.Features.Plans;

/// <summary>How sure a plan is and what more would cost, in sentences for the plan page and the terminal alike.</summary>
public static class SureWords
{
    /// <summary>"80 of 100"; never "100 of 100", for no number of days proves that nothing can go wrong.</summary>
    public static string Of100(double share) => share >= 0.995 ? "more than 99 of 100" : $"{Hundredths(share)} of 100";

    /// <summary>When a course is served over all days.</summary>
    public static string Spread(TableSpread spread, Meal meal)
    {
        var course = meal.Courses.Single(one => one.Id == spread.Course);
        string At(double late) => PlanWords.Clock(course.TableTime + (int)Math.Ceiling(Math.Round(late, 1)), meal);
        return (Late(spread.Median), Late(spread.Ninetieth)) switch
        {
            (false, false) => $"{course.Name}: nine days of ten at {At(0)}.",
            (false, true) => $"{course.Name}: at {At(0)} on most days, nine of ten by {At(spread.Ninetieth)}.",
            _ => $"{course.Name}: half of the days by {At(spread.Median)}, nine of ten by {At(spread.Ninetieth)}.",
        };

        static bool Late(double minutes) => minutes >= 0.5;
    }

    /// <summary>Why a step decides, and what it would help to have more time there.</summary>
    public static string Decides(DecisiveStep decisive)
    {
        var gain = decisive.Gain >= 0.005 ? $"; {DecisiveStep.SpareMinutes} spare minutes after it save {DaysIn100(decisive.Gain)}" : "";
        return $"the table waits for it on {Hundredths(decisive.LateShare)} of 100 late days{gain}";
    }

    /// <summary>How often food stands too long; null when it hardly ever does.</summary>
    public static string? Stands(Confidence confidence, Meal meal) => confidence switch
    {
        { TooLong: < 0.005 } => null,
        { Standing: [var worst, ..] } => $"On {Of100(confidence.TooLong)} days something stands 5 minutes or more beyond its limit, most often “{meal.DishOf(worst.Step).Name}” after “{meal.Step(worst.Step).Text}”.",
        _ => $"On {Of100(confidence.TooLong)} days something stands 5 minutes or more beyond its limit.",
    };

    /// <summary>Where five spare minutes buy most; null when they buy nothing.</summary>
    public static string? BestSpare(Confidence confidence, Meal meal) =>
        confidence.Decisive.IsEmpty || confidence.Decisive.MaxBy(one => one.Gain) is not { Gain: >= 0.005 } best
            ? null
            : $"Five spare minutes buy most after “{meal.Step(best.Step).Text}”: they save {DaysIn100(best.Gain)}.";

    /// <summary>What a surer plan brings, and what it costs.</summary>
    public static string Offer(Buffered buffered)
    {
        var (plain, surer) = (buffered.Plain.Confidence!.OnTimeWithin10, buffered.Plan.Confidence!.OnTimeWithin10);
        return $"Ready up to {buffered.Plan.Cost.Cushion} minutes before the table, as far as the food keeps: on time on {Of100(surer)} days instead of {Hundredths(plain)}.";
    }

    public static string Price(Buffered buffered)
    {
        var prices = new List<string>();
        if (buffered.WaitingMinutes > 0)
        {
            var longest = buffered.LongestWait is var (dish, minutes) ? $" ({dish.Name} {PlanHeadline.Minutes(minutes)})" : "";
            prices.Add($"the dishes wait {PlanHeadline.Minutes(buffered.WaitingMinutes)} longer in all{longest}");
        }

        if (buffered.KitchenMinutes != 0)
        {
            prices.Add($"the cooking of the day begins {PlanHeadline.Minutes(Math.Abs(buffered.KitchenMinutes))} {(buffered.KitchenMinutes > 0 ? "earlier" : "later")}");
        }

        var price = prices.Count == 0 ? "It costs nothing that can be counted." : $"The price: {string.Join("; ", prices)}.";
        return PlanHeadline.MayBeChance(buffered.Plain, buffered.Plan) is { } chance ? $"{price} {chance}" : price;
    }

    /// <summary>When no buffer brings what was wished.</summary>
    public static string? Unreached(Buffered buffered, double wish) => buffered.Plan.Confidence is { } reached && reached.OnTimeWithin10 < wish
        ? $"No buffer was found that reaches {Of100(wish)}. Time after the steps that decide it would help, another pair of hands, or a later table."
        : null;

    static string DaysIn100(double share) => Hundredths(share) == 1 ? "1 day in 100" : $"{Hundredths(share)} days in 100";

    static int Hundredths(double share) => Math.Clamp((int)Math.Round(share * 100, MidpointRounding.AwayFromZero), 0, 99);
}
