using CookAlong.Web.Features.Household;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Household;

public sealed class WrongTriesTests
{
    readonly FakeTimeProvider clock = new();

    [Fact]
    public void Five_slips_are_forgiven()
    {
        var tries = After(5);

        Assert.Equal(TimeSpan.Zero, tries.Wait("a"));
    }

    [Theory]
    [InlineData(6, 2)]
    [InlineData(7, 4)]
    [InlineData(10, 32)]
    [InlineData(40, 900)]
    public void Each_further_one_doubles_the_wait_up_to_a_quarter_of_an_hour(int wrong, int seconds)
    {
        var tries = After(wrong);

        Assert.Equal(TimeSpan.FromSeconds(seconds), tries.Wait("a"));
    }

    [Fact]
    public void The_worst_of_several_keys_counts()
    {
        var tries = After(7);

        Assert.Equal(TimeSpan.FromSeconds(4), tries.Wait("b", "a"));
        Assert.Equal(TimeSpan.Zero, tries.Wait("b"));
    }

    [Fact]
    public void A_right_one_forgives_all()
    {
        var tries = After(9);
        tries.Right("a");

        Assert.Equal(TimeSpan.Zero, tries.Wait("a"));
    }

    [Fact]
    public void An_hour_of_peace_begins_the_count_anew()
    {
        var tries = After(9);
        clock.Advance(TimeSpan.FromMinutes(61));
        tries.Wrong("a");

        Assert.Equal(TimeSpan.Zero, tries.Wait("a"));
    }

    WrongTries After(int wrong)
    {
        var tries = new WrongTries(clock);
        for (var i = 0; i < wrong; i++)
        {
            tries.Wrong("a");
        }

        return tries;
    }
}
