using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>When somebody is in the kitchen: spans in order and apart, so that nobody falls into the seam between two that touch.</summary>
sealed class Presence
{
    static readonly Window Ever = new(new Minute(int.MinValue), new Minute(int.MaxValue));

    readonly ImmutableArray<Window> spans;

    Presence(IEnumerable<Window> windows)
    {
        var merged = new List<Window>();
        foreach (var window in windows.Where(window => window.From < window.To).OrderBy(window => window.From))
        {
            if (merged is [.., var last] && window.From <= last.To)
            {
                merged[^1] = last with { To = Minute.Later(last.To, window.To) };
            }
            else
            {
                merged.Add(window);
            }
        }

        spans = [.. merged];
    }

    public static Presence Always { get; } = new([Ever]);

    public static Presence Of(Helper helper) => helper.Available.IsDefaultOrEmpty ? Always : new(helper.Available);

    /// <summary>While at least one of them is here; never, when there is nobody.</summary>
    public static Presence OfAny(IEnumerable<Helper> helpers) => new(helpers.SelectMany(helper => Of(helper).spans));

    public static Presence During(Window window) => new([window]);

    /// <summary>While both are here.</summary>
    public Presence And(Presence other) =>
        new(from one in spans
            from two in other.spans
            select new Window(Minute.Later(one.From, two.From), Minute.Earlier(one.To, two.To)));

    /// <summary>The spans in minutes after <paramref name="zero"/>; null = always.</summary>
    public (int From, int To)[]? After(Minute zero) =>
        spans is [var only] && only == Ever ? null : [.. spans.Select(span => (Limited(span.From, zero), Limited(span.To, zero)))];

    /// <summary>The first minute of [start, end) at which nobody is here; null when somebody is throughout.</summary>
    public Minute? FirstGap(Minute start, Minute end)
    {
        if (end <= start)
        {
            return null;
        }

        foreach (var span in spans)
        {
            if (span.From <= start && start < span.To)
            {
                return span.To >= end ? null : span.To;
            }
        }

        return start;
    }

    // Half of what fits, so that a few days more or less can still be added.
    static int Limited(Minute at, Minute zero) => (int)Math.Clamp(at.SinceEpoch - zero.SinceEpoch, int.MinValue / 2, int.MaxValue / 2);
}
