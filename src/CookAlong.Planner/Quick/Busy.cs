using System.Numerics;

namespace CookAlong.Planner.Quick;

/// <summary>
/// When somebody is busy, a bit each minute: hands are asked for oftener than all else, and 64 minutes of one pair are one look.
/// </summary>
internal sealed class Busy
{
    private const int Word = 64;

    private readonly ulong[] words;

    /// <param name="taken">A cell each minute; 0 = free.</param>
    public Busy(ReadOnlySpan<ushort> taken)
    {
        words = new ulong[(taken.Length + Word - 1) / Word];
        for (var at = 0; at < taken.Length; at++)
        {
            words[at / Word] |= taken[at] == 0 ? 0 : 1UL << (at % Word);
        }
    }

    public bool IsFree(int start, int minutes) => start >= 0 && LastBusy(start, start + minutes) < 0;

    /// <summary>The latest end up to <paramref name="end"/> of so many free minutes; null if there is none.</summary>
    public int? LatestFree(int end, int minutes)
    {
        while (end - minutes >= 0)
        {
            var busy = LastBusy(end - minutes, end);
            if (busy < 0)
            {
                return end;
            }

            end = LastFree(busy) + 1;
        }

        return null;
    }

    /// <summary>What was free becomes busy, and what was busy free.</summary>
    public void Turn(int start, int minutes)
    {
        for (var (at, end) = (start, start + minutes); at < end; at = (at | (Word - 1)) + 1)
        {
            words[at / Word] ^= Of(at, Math.Min(end, (at | (Word - 1)) + 1));
        }
    }

    /// <summary>Of the minutes from the one to before the other, in one word.</summary>
    private static ulong Of(int from, int to) => ulong.MaxValue >> (Word - (to - from)) << (from % Word);

    /// <summary>From the one to before the other; below nought if none.</summary>
    private int LastBusy(int from, int to)
    {
        while (to > from)
        {
            var begin = Math.Max(from, (to - 1) & -Word);
            if ((words[begin / Word] & Of(begin, to)) is not 0 and var busy)
            {
                return (begin & -Word) + BitOperations.Log2(busy);
            }

            to = begin;
        }

        return -1;
    }

    /// <summary>Before that minute; below nought if none.</summary>
    private int LastFree(int to)
    {
        while (to > 0)
        {
            var begin = (to - 1) & -Word;
            if ((~words[begin / Word] & Of(begin, to)) is not 0 and var free)
            {
                return begin + BitOperations.Log2(free);
            }

            to = begin;
        }

        return -1;
    }
}
