using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Tests.Meals;

public sealed class TendTests
{
    [Theory]
    [InlineData(30, 1, 90, new[] { 30, 60 })] // none at the very end
    [InlineData(30, 1, 91, new[] { 30, 60, 90 })]
    [InlineData(30, 5, 94, new[] { 30, 60 })]
    [InlineData(30, 5, 95, new[] { 30, 60, 90 })]
    [InlineData(30, 1, 20, new int[0])]
    public void A_repeated_tend_comes_as_long_as_it_is_done_by_the_end(int every, int minutes, int length, int[] times) =>
        Assert.Equal(times, new Tend("baste", minutes, every, null, 3, ChildSafe: false).Times(length));

    [Theory]
    [InlineData(20, 45, 20)]
    [InlineData(-10, 45, 35)]
    [InlineData(0, 45, 0)]
    public void A_single_tend_counts_from_the_start_or_back_from_the_end(int at, int length, int time) =>
        Assert.Equal([time], new Tend("turn", 1, null, at, 3, ChildSafe: false).Times(length));
}
