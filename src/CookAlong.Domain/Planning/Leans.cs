namespace CookAlong.Domain.Planning;

/// <summary>
/// Which way the cook leans the plan: each raises one of the planner's prices. No rule is softened, and a table time never gives
/// way to a lean.
/// </summary>
[Flags]
public enum Leans
{
    None = 0,

    /// <summary>The kitchen day begins later.</summary>
    StartLater = 1,

    /// <summary>Less hands-on work in the last half hour before a course, and less of it side by side.</summary>
    CalmEnd = 2,

    /// <summary>The dial of an oven is turned less often.</summary>
    FewerDialTurns = 4,

    /// <summary>Hands stay free between jobs in the last three hours, to finish washing up as we go.</summary>
    WashUp = 8,
}
