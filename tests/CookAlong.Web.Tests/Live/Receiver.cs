using System.Collections.Concurrent;
using System.Net;

namespace CookAlong.Web.Tests.Live;

/// <summary>Whoever stands at the other end of a web request: keeps what came and answers as told.</summary>
sealed class Receiver : HttpMessageHandler
{
    readonly ConcurrentQueue<(HttpRequestMessage Request, byte[] Body)> came = new();
    TaskCompletionSource next = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public HttpStatusCode Answers { get; set; } = HttpStatusCode.Created;

    /// <summary>Nobody is answered before this is done; null = at once.</summary>
    public TaskCompletionSource? Holds { get; init; }

    public IReadOnlyList<(HttpRequestMessage Request, byte[] Body)> Came => [.. came];

    /// <summary>Done when the next request has come.</summary>
    public Task Next => next.Task;

    public void Again() => next = new(TaskCreationOptions.RunContinuationsAsynchronously);

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        came.Enqueue((request, request.Content is null ? [] : await request.Content.ReadAsByteArrayAsync(cancellationToken)));
        next.TrySetResult();
        await (Holds?.Task ?? Task.CompletedTask);
        return new HttpResponseMessage(Answers) { RequestMessage = request };
    }
}
