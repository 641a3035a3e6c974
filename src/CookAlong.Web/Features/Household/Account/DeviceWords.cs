namespace CookAlong.Web.Features.Household.Account;

/// <summary>What a browser calls itself, in the few words by which its owner knows it: "Firefox on Linux". A guess, never relied upon.</summary>
static class DeviceWords
{
    // Each says the names of others too, so the order counts.
    static readonly (string Sign, string Name)[] Browsers =
    [
        ("Edg", "Edge"), ("OPR/", "Opera"), ("SamsungBrowser", "Samsung Internet"), ("FxiOS", "Firefox"), ("Firefox", "Firefox"), ("CriOS", "Chrome"), ("Chrome", "Chrome"), ("Safari", "Safari"),
    ];

    static readonly (string Sign, string Name)[] Machines =
    [
        ("iPhone", "an iPhone"), ("iPad", "an iPad"), ("Android", "Android"), ("CrOS", "ChromeOS"), ("Windows", "Windows"), ("Mac OS X", "a Mac"), ("Linux", "Linux"),
    ];

    /// <summary>At most 40 letters, whatever was sent.</summary>
    public static string Of(string userAgent)
    {
        string? Find((string Sign, string Name)[] known) => known.FirstOrDefault(one => userAgent.Contains(one.Sign, StringComparison.Ordinal)).Name;
        return (Find(Browsers), Find(Machines)) switch
        {
            ({ } browser, { } machine) => $"{browser} on {machine}",
            ({ } browser, null) => browser,
            (null, { } machine) => $"A browser on {machine}",
            (null, null) => "A device without a name",
        };
    }
}
