using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace CookAlong.Web.Security;

/// <summary>How long a client may take over one request before its connection is ended. Common practice, no source; the rates are Kestrel's own.</summary>
static class SlowClients
{
    /// <summary>For a request's line and headers: a few hundred bytes that a phone has ready.</summary>
    public static readonly TimeSpan HeadersWithin = TimeSpan.FromSeconds(10);

    /// <summary>Of a body and of an answer, in bytes a second, after a few seconds' grace.</summary>
    public static readonly MinDataRate Slowest = new(bytesPerSecond: 240, gracePeriod: TimeSpan.FromSeconds(5));

    public static void EndSlowClients(this KestrelServerLimits limits)
    {
        limits.RequestHeadersTimeout = HeadersWithin;
        limits.MinRequestBodyDataRate = Slowest;
        limits.MinResponseDataRate = Slowest;
    }
}
