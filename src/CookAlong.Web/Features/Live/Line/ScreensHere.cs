using System.Collections.Immutable;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>What a screen says of itself; only it can know.</summary>
/// <param name="IsBoard">It shows the whole kitchen, not one person's jobs.</param>
/// <param name="IsArmed">Its sound plays, and somebody has said that they heard it.</param>
/// <param name="IsAwake">It keeps itself from sleeping.</param>
public sealed record ScreenState(bool IsBoard, bool IsArmed, bool IsAwake)
{
    public static ScreenState Unknown { get; } = new(IsBoard: false, IsArmed: false, IsAwake: false);
}

public sealed record ScreenHere(PersonId Person, ScreenState State);

/// <summary>The screens that look at one run, at one moment.</summary>
/// <param name="leftAt">When the last screen of somebody who has none now was closed.</param>
public sealed class ScreensHere(ImmutableArray<ScreenHere> screens, Func<PersonId, DateTimeOffset> leftAt)
{
    /// <summary>Shorter, and a phone that is only turned over would be told of.</summary>
    static readonly TimeSpan SilentFrom = TimeSpan.FromMinutes(2);

    public ImmutableArray<ScreenHere> All => screens;

    public bool IsAnyArmed => screens.Any(screen => screen.State.IsArmed);

    public bool IsArmed(PersonId person) => screens.Any(screen => screen.Person == person && screen.State.IsArmed);

    /// <summary>Since when nothing is heard of somebody's screens; null while one is open, or was a moment ago.</summary>
    public DateTimeOffset? SilentSince(PersonId person, DateTimeOffset now) =>
        screens.Any(screen => screen.Person == person) ? null
        : leftAt(person) is var since && now - since >= SilentFrom ? since
        : null;

    /// <summary>The same while nothing changes that anybody is shown.</summary>
    public string Mark => string.Join(' ', screens.Select(screen => $"{screen.Person}{screen.State}").Order(StringComparer.Ordinal)).GetHashCode(StringComparison.Ordinal).ToString("x8", System.Globalization.CultureInfo.InvariantCulture);
}
