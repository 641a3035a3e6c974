using CookAlong.Domain.Runs;

namespace CookAlong.Web.Tests.Live;

public sealed class WatcherTests
{
    [Theory]
    [InlineData("")]
    [InlineData("/me")]
    [InlineData("/board-part")]
    [InlineData("/me-part")]
    public async Task Whoever_only_looks_gets_the_dining_room_s_page_at_every_address(string part)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var gran = await kitchen.JoinAsync("Gran", Role.Watcher);
        var page = await gran.ReadAsync($"/cook/{kitchen.Run}{part}");
        Assert.Contains("in about 2 hours 40 minutes", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<button", page, StringComparison.Ordinal);
        Assert.DoesNotContain("in about", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}{part}"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/wall")]
    [InlineData("/board-part")]
    [InlineData("/wall-part")]
    public async Task A_child_gets_its_own_page_at_every_address(string part)
    {
        await using var kitchen = await LiveKitchen.StartedAsync();
        var tobi = await kitchen.JoinAsync("Tobi");
        Assert.Contains("roll", await tobi.ReadAsync($"/cook/{kitchen.Run}/me-part"), StringComparison.Ordinal);
        var page = await tobi.ReadAsync($"/cook/{kitchen.Run}{part}");
        Assert.Contains("class=\"me-part", page, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"me-part", await kitchen.Host.ReadAsync($"/cook/{kitchen.Run}{part}"), StringComparison.Ordinal);
    }
}
