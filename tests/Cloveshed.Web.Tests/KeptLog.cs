using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Tests;

/// <summary>Keeps what the program logs, for a test to look at and for its output when something broke.</summary>
public sealed class KeptLog : ILoggerProvider
{
    public ConcurrentQueue<string> Lines { get; } = new();

    public ILogger CreateLogger(string categoryName) => new Writer(categoryName, Lines);

    public void Dispose()
    {
    }

    private sealed class Writer(string category, ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Information;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            lines.Enqueue($"{logLevel} {category}: {formatter(state, exception)} {exception}");
    }
}
