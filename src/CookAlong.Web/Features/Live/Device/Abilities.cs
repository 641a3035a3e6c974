using System.Collections.Immutable;

namespace CookAlong.Web.Features.Live.Device;

/// <summary>What a device may or may not be able to do, as its page says it. Which of the two holds, the script finds out (device.js).</summary>
/// <param name="Id">As the script names it.</param>
sealed record Ability(string Id, string Name, string WhenYes, string WhenNo);

static class Abilities
{
    public static ImmutableArray<Ability> All { get; } =
    [
        new("sound", "Ring for calls", "Once armed, while this page is open and the device is not muted.", "This browser plays no sounds. Watch the screen, or arm another device."),
        new("vibrate", "Shake", "With every call, where the device’s settings allow it.", "This device or browser cannot be made to shake."),
        new("speak", "Speak calls", "In this browser’s own voice. Switch it on below.", "This browser has no voice."),
        new("awake", "Keep its screen on", "While the page is open and armed.", "Set the screen’s time-out to “never” in the device’s settings while you cook. Over HTTPS the page could do it by itself."),
        new("secure", "Came over HTTPS", "Everything a web page may do can work here.", "This page came over plain HTTP, as is usual at home. See below what that leaves out."),
        new("copy", "Show the board after a reload while the server is away", "The last board is kept on this device.", "Leave the page open: it goes on counting and ringing without the server, but a reload needs it."),
        new("notify", "Show calls while another app is in front", "Once armed and allowed, a call that rings while another app is in front is shown there too.", "Only the open page can call you."),
    ];
}
