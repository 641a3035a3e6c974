namespace CookAlong.Web.Features.Secure;

/// <summary>Kinds of devices that install a certificate in different ways.</summary>
public enum DeviceKind
{
    IPhone,
    Android,
    Windows,
    Mac,
    Linux,
}

static class Devices
{
    /// <param name="agent">What a browser says of itself: only decides which steps stand open, so a wrong guess costs a tap.</param>
    public static DeviceKind? Of(string agent) =>
        agent.Contains("iPhone", StringComparison.Ordinal) || agent.Contains("iPad", StringComparison.Ordinal) ? DeviceKind.IPhone
        : agent.Contains("Android", StringComparison.Ordinal) ? DeviceKind.Android
        : agent.Contains("Windows", StringComparison.Ordinal) ? DeviceKind.Windows
        // Larger tablets of that make call themselves a Mac; both can do with the profile.
        : agent.Contains("Macintosh", StringComparison.Ordinal) ? DeviceKind.Mac
        : agent.Contains("Linux", StringComparison.Ordinal) ? DeviceKind.Linux
        : null;
}
