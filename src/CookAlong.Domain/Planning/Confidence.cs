using System.Collections.Immutable;

namespace CookAlong.Domain.Planning;

/// <summary>How sure a plan is, from cooking it many times over. All chances are shares of the days, 0 to 1.</summary>
/// <param name="OnTimeWithin10">Chance of serving every course within 10 minutes of its promise.</param>
/// <param name="ExpectedLateMinutes">How late the latest course is on average; an early one counts as 0.</param>
/// <param name="DecisiveSteps">The steps that most often decide it, worst first.</param>
public sealed record Confidence(double OnTimeWithin10, double ExpectedLateMinutes, ImmutableArray<StepId> DecisiveSteps)
{
    /// <summary>The same steps, with how often they decide and what would help.</summary>
    public ImmutableArray<DecisiveStep> Decisive { get; init; } = [];

    /// <summary>Chance that some food stands longer than its hold or its gap allows, by five minutes or more.</summary>
    public double TooLong { get; init; }

    /// <summary>Which food that is, most often first.</summary>
    public ImmutableArray<StandingFood> Standing { get; init; } = [];

    /// <summary>When each course comes to the table.</summary>
    public ImmutableArray<TableSpread> Tables { get; init; } = [];
}

/// <param name="LateShare">Of the days more than 10 minutes late, the share on which the table waited for this step, and it took longer than likely.</param>
/// <param name="Gain">By how much the chance of serving on time rises with <see cref="SpareMinutes"/> more after it.</param>
public readonly record struct DecisiveStep(StepId Step, double LateShare, double Gain)
{
    public const int SpareMinutes = 5;
}

/// <param name="Step">What is ready and then stands too long.</param>
public readonly record struct StandingFood(StepId Step, double Chance);

/// <summary>The table time of a course over all days.</summary>
/// <param name="Days">Minutes after the promise on <see cref="DayCount"/> days that stand for all, best first; 0 = kept.</param>
public sealed record TableSpread(CourseId Course, ImmutableArray<double> Days)
{
    public const int DayCount = 20;

    /// <summary>One day in ten is better than this.</summary>
    public double Tenth => Quantile(0.1);

    public double Median => Quantile(0.5);

    /// <summary>One day in ten is worse than this.</summary>
    public double Ninetieth => Quantile(0.9);

    double Quantile(double share)
    {
        var at = (share * Days.Length) - 0.5;
        var (under, over) = ((int)Math.Floor(at), Math.Min(Days.Length - 1, (int)Math.Ceiling(at)));
        return Days[under] + ((Days[over] - Days[under]) * (at - under));
    }
}
