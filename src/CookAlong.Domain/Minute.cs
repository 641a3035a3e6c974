namespace CookAlong.Domain;

/// <summary>An instant on the kitchen clock: whole minutes since 1970-01-01 00:00 UTC.</summary>
/// <remarks>
/// Plans are made of real minutes, so a step keeps its length across a change of the clocks;
/// only the edge turns a minute into somebody's local time (<see cref="LocalTime"/>).
/// </remarks>
public readonly record struct Minute(long SinceEpoch) : IComparable<Minute>
{
    public static Minute operator +(Minute at, int minutes) => new(at.SinceEpoch + minutes);

    public static Minute operator -(Minute at, int minutes) => new(at.SinceEpoch - minutes);

    /// <summary>Minutes from <paramref name="from"/> to <paramref name="to"/>; negative when it lies before.</summary>
    public static int operator -(Minute to, Minute from) => checked((int)(to.SinceEpoch - from.SinceEpoch));

    public static bool operator <(Minute left, Minute right) => left.SinceEpoch < right.SinceEpoch;

    public static bool operator >(Minute left, Minute right) => left.SinceEpoch > right.SinceEpoch;

    public static bool operator <=(Minute left, Minute right) => left.SinceEpoch <= right.SinceEpoch;

    public static bool operator >=(Minute left, Minute right) => left.SinceEpoch >= right.SinceEpoch;

    public int CompareTo(Minute other) => SinceEpoch.CompareTo(other.SinceEpoch);

    public static Minute Later(Minute one, Minute other) => one > other ? one : other;

    public static Minute Earlier(Minute one, Minute other) => one < other ? one : other;

    /// <summary>The whole minute that <paramref name="instant"/> falls in.</summary>
    public static Minute Of(DateTimeOffset instant) => new((long)Math.Floor(instant.ToUnixTimeSeconds() / 60.0));

    public DateTimeOffset Utc => DateTimeOffset.FromUnixTimeSeconds(SinceEpoch * 60);

    public override string ToString() => Utc.ToString("yyyy-MM-dd HH:mm'Z'", System.Globalization.CultureInfo.InvariantCulture);
}
