using System.Text;
using System.Text.Json;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Shared;

/// <summary>
/// The log as JSON, one object a line: time, level, source, message and its values. Written to what it is given, from one
/// place, so that lines don't mix.
/// </summary>
public sealed class JsonLines(TextWriter into, TimeProvider clock, LogLevel least) : ILoggerProvider
{
    private readonly Lock writing = new();

    private LogLevel Least => least;

    public ILogger CreateLogger(string categoryName) => new Writer(this, categoryName);

    public void Dispose()
    {
    }

    private void Write(LogLevel level, string source, string message, object? values, Exception? problem)
    {
        using MemoryStream line = new();
        using (Utf8JsonWriter json = new(line))
        {
            json.WriteStartObject();
            json.WriteString("time", clock.GetUtcNow().UtcDateTime);
            json.WriteString("level", level.ToString());
            json.WriteString("source", source);
            json.WriteString("message", message);
            foreach ((string name, object? value) in values as IReadOnlyList<KeyValuePair<string, object?>> ?? [])
            {
                Write(json, name, value);
            }

            if (problem is not null)
            {
                json.WriteString("exception", problem.ToString());
            }

            json.WriteEndObject();
        }

        string text = Encoding.UTF8.GetString(line.GetBuffer(), 0, (int)line.Length);
        lock (writing)
        {
            into.WriteLine(text);
            into.Flush();
        }
    }

    private static void Write(Utf8JsonWriter json, string name, object? value)
    {
        switch (value)
        {
            case null or "": break;
            case int number: json.WriteNumber(name, number); break;
            case long number: json.WriteNumber(name, number); break;
            case double number when double.IsFinite(number): json.WriteNumber(name, number); break;
            case bool yes: json.WriteBoolean(name, yes); break;
            default:
                // The template of the message says nothing that the message does not.
                if (name != "{OriginalFormat}")
                {
                    json.WriteString(name, Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture));
                }

                break;
        }
    }

    private sealed class Writer(JsonLines lines, string source) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= lines.Least && logLevel != LogLevel.None && Told(logLevel);

        /// <summary>That it could not start is told by who started it, in one line.</summary>
        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (IsEnabled(logLevel) && eventId.Name != "HostedServiceStartupFaulted")
            {
                lines.Write(logLevel, source, formatter(state, exception), state, exception);
            }
        }

        /// <summary>
        /// The framework tells every step with the address that was asked, which may hold names: below a warning only our own lines are
        /// kept. That keys stand unencrypted beside the ledger, readable to its owner alone, is meant so and said in the manual.
        /// </summary>
        private bool Told(LogLevel level) =>
            source.StartsWith("Cloveshed", StringComparison.Ordinal)
            || level >= (source.StartsWith("Microsoft.AspNetCore.DataProtection", StringComparison.Ordinal) ? LogLevel.Error : LogLevel.Warning);
    }
}
