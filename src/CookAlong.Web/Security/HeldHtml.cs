namespace CookAlong.Web.Security;

/// <summary>Keeps an answer's HTML until it is whole; everything else goes through as it comes.</summary>
sealed class HeldHtml(Stream client, HttpResponse response) : Stream
{
    /// <summary>Null: what was written was no HTML.</summary>
    public MemoryStream? Held { get; private set; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public static bool IsHtml(HttpResponse response) =>
        response.ContentType?.StartsWith("text/html", StringComparison.OrdinalIgnoreCase) == true && response.Headers.ContentEncoding.Count == 0;

    Stream Goal => IsHtml(response) ? Held ??= new MemoryStream() : client;

    public override void Write(byte[] buffer, int offset, int count) => Goal.Write(buffer, offset, count);

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default) => Goal.WriteAsync(buffer, cancellationToken);

    public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) => Goal.WriteAsync(buffer, offset, count, cancellationToken);

    public override void Flush()
    {
    }

    public override Task FlushAsync(CancellationToken cancellationToken) => IsHtml(response) ? Task.CompletedTask : client.FlushAsync(cancellationToken);

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
