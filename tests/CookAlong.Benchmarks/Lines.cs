using System.Text.Json;
using Microsoft.AspNetCore.SignalR.Client;

namespace CookAlong.Benchmarks;

/// <summary>Screens without a page: at each news they fetch what a phone's page would.</summary>
sealed class Lines : IAsyncDisposable
{
    readonly List<HubConnection> lines = [];

    public static async Task<Lines> OpenAsync(House house, Guid run, int count)
    {
        var opened = new Lines();
        for (var i = 0; i < count; i++)
        {
            var line = To(house);
            line.On<JsonElement>("Changed", _ => house.Client.GetStringAsync($"/cook/{run}/me-part"));
            await line.StartAsync();
            await line.InvokeAsync<JsonElement>("Enter", run);
            opened.lines.Add(line);
        }

        return opened;
    }

    /// <summary>A line of the host's to the live hub, not yet begun.</summary>
    public static HubConnection To(House house) => new HubConnectionBuilder()
        .WithUrl(new Uri(new Uri(house.Url), "/hubs/live"), options =>
        {
            options.Cookies = house.Cookies;
            options.Headers["Origin"] = house.Url;
        })
        .Build();

    public async ValueTask DisposeAsync()
    {
        foreach (var line in lines)
        {
            await line.DisposeAsync();
        }
    }
}
