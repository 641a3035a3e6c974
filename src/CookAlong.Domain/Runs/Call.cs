namespace CookAlong.Domain.Runs;

/// <summary>An alert with its time. Devices hold the whole schedule and ring by themselves.</summary>
/// <param name="Step">Null for calls about an oven's dial, table time or the whole kitchen.</param>
public sealed record Call(
    CallId Id,
    DateTimeOffset Due,
    CallKind Kind,
    CallPriority Priority,
    StepId? Step,
    Meals.Tend? Tend,
    Planning.DialSetting? Dial,
    OvenId? Oven,
    CourseId? Course,
    bool IsAcknowledged);

public enum CallKind
{
    /// <summary>A tray goes in, a pan goes on.</summary>
    In,

    /// <summary>A tray comes out, a pan comes off.</summary>
    Out,

    Tend,

    /// <summary>Turn an oven's dial.</summary>
    Dial,

    /// <summary>A step with hands begins.</summary>
    Begin,

    /// <summary>A step runs past its end.</summary>
    Over,

    /// <summary>A resting joint is about to be colder than hot food is kept.</summary>
    Cools,

    /// <summary>A pause point is reached.</summary>
    Pause,

    /// <summary>Table in ten minutes.</summary>
    Table,
}

/// <summary>From what can go wrong.</summary>
public enum CallPriority
{
    /// <summary>Information.</summary>
    Low,

    /// <summary>A step is late.</summary>
    Medium,

    /// <summary>Food becomes unsafe or burns.</summary>
    High,
}
