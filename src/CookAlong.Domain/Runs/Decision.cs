using System.Collections.Immutable;

namespace CookAlong.Domain.Runs;

/// <summary>The answer to a tap: what happened because of it, or why nothing did.</summary>
public abstract record Decision
{
    /// <param name="Events">Empty when what was asked for is already so, or the same tap was sent twice.</param>
    public sealed record Accepted(ImmutableArray<RunEvent> Events) : Decision;

    public sealed record Refused(Refusal Why) : Decision;

    public static Decision Nothing { get; } = new Accepted([]);

    public static implicit operator Decision(RunEvent happened) => new Accepted([happened]);

    public static implicit operator Decision(Refusal why) => new Refused(why);
}
