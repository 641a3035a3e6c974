using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace CookAlong.Web.Tests;

/// <summary>The server's log, as lines a test can read.</summary>
sealed class LogLines : ILoggerProvider, ILogger
{
    readonly ConcurrentQueue<string> lines = new();

    public IReadOnlyList<string> Lines => [.. lines];

    public ILogger CreateLogger(string categoryName) => this;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        lines.Enqueue($"{logLevel}: {formatter(state, exception)}{(exception is null ? "" : $" {exception}")}");

    public void Dispose()
    {
    }
}
