namespace CookAlong.Web.Features.Live.Outward;

/// <summary>One receiver of calls beyond the page.</summary>
public interface IWayOut
{
    /// <summary>As deliveries name it: "webhook", "mqtt", "push:" and an id.</summary>
    string Id { get; }

    /// <summary>Sends calls that came together as one message.</summary>
    /// <exception cref="NotReachedException">It did not arrive; another try may.</exception>
    Task SendAsync(IReadOnlyList<OutwardCall> calls, CancellationToken stop);
}

/// <param name="Call">Null for a test.</param>
/// <param name="Text">A sentence, to be shown or spoken.</param>
/// <param name="Priority">high, medium or low.</param>
public sealed record OutwardCall(Guid Run, string? Call, string Text, string Priority, DateTimeOffset Due);

/// <summary>A receiver that could not be reached. The message is for the household and names no secret.</summary>
public sealed class NotReachedException : Exception
{
    public NotReachedException(string message) : base(message)
    {
    }

    public NotReachedException(string message, Exception why) : base(message, why)
    {
    }

    /// <summary>The receiver is gone for good.</summary>
    public bool IsGone { get; init; }
}
