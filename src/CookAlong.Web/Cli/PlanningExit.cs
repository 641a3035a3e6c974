namespace CookAlong.Web.Cli;

/// <summary>What the planning verbs return; promised by the meal-file format, never changed.</summary>
static class PlanningExit
{
    /// <summary>A plan on time exists; a checked plan keeps every rule.</summary>
    public const int Good = 0;

    /// <summary>Only a late plan exists; a checked plan breaks a rule.</summary>
    public const int Late = 1;

    /// <summary>Bad input, also what this kitchen can never do.</summary>
    public const int BadInput = 2;

    /// <summary>The meal is well formed and no plan exists at any table time.</summary>
    public const int None = 3;
}
