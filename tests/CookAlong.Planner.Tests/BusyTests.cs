using CookAlong.Planner.Quick;

namespace CookAlong.Planner.Tests;

/// <summary>Minutes kept as bits say what a cell for each minute says.</summary>
public sealed class BusyTests
{
    /// <summary>Not a multiple of a word's bits.</summary>
    private const int Width = 300;

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.3)]
    [InlineData(0.97)]
    public void Bits_say_what_cells_say(double share)
    {
        var random = new Random(1);
        ushort[] cells = [.. Enumerable.Range(0, Width).Select(_ => (ushort)(random.NextDouble() < share ? 1 : 0))];
        var busy = new Busy(cells);
        for (var go = 0; go < 5_000; go++)
        {
            var minutes = random.Next(0, 140);
            var start = random.Next(-5, Width - minutes + 1);
            Assert.Equal(IsFree(cells, start, minutes), busy.IsFree(start, minutes));
            Assert.Equal(LatestFree(cells, start + minutes, minutes), busy.LatestFree(start + minutes, minutes));
            if (go % 10 == 0 && start >= 0)
            {
                busy.Turn(start, minutes);
                foreach (ref var cell in cells.AsSpan(start, minutes))
                {
                    cell ^= 1;
                }
            }
        }
    }

    private static bool IsFree(ushort[] cells, int start, int minutes) => start >= 0 && cells.AsSpan(start, minutes).IndexOfAnyExcept((ushort)0) < 0;

    private static int? LatestFree(ushort[] cells, int end, int minutes)
    {
        for (; end - minutes >= 0; end--)
        {
            if (IsFree(cells, end - minutes, minutes))
            {
                return end;
            }
        }

        return null;
    }
}
