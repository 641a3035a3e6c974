namespace CookAlong.Domain.Runs.Rehearsing;

/// <summary>The clock of a rehearsal: it begins at another moment than the kitchen's, and runs faster.</summary>
/// <param name="Began">When it was set going, by the kitchen's clock.</param>
/// <param name="Shows">What it showed then.</param>
/// <param name="Rate">Its seconds in one of the kitchen's, 1 to 120.</param>
public sealed record RunClock(DateTimeOffset Began, DateTimeOffset Shows, int Rate)
{
    public const int Slowest = 1;
    public const int Fastest = 120;

    /// <summary>What it shows at that moment of the kitchen's clock.</summary>
    public DateTimeOffset At(DateTimeOffset real) => Shows + ((real - Began) * Rate);
}
