namespace CookAlong.Domain.Runs;

/// <summary>Whom a call that nobody has answered reaches as it grows older. Information (low) never reaches further.</summary>
public static class Escalation
{
    public static readonly TimeSpan ToEverybodyAfter = TimeSpan.FromSeconds(30);

    public static readonly TimeSpan BeyondAfter = TimeSpan.FromSeconds(90);

    /// <summary>Null while it is not due, or once it is acknowledged.</summary>
    public static CallReach? ReachOf(Call call, DateTimeOffset now) =>
        call.IsAcknowledged || call.Due > now ? null
        : call.Priority == CallPriority.Low ? CallReach.Concerned
        : now - call.Due >= BeyondAfter ? CallReach.Beyond
        : now - call.Due >= ToEverybodyAfter ? CallReach.Everybody
        : CallReach.Concerned;
}

public enum CallReach
{
    /// <summary>The board, and the phones of those whose job it is or who may take it.</summary>
    Concerned,

    /// <summary>Every screen in the kitchen.</summary>
    Everybody,

    /// <summary>What the household has outside the page: locked phones, its own speakers.</summary>
    Beyond,
}
