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
}
