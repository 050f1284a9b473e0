using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace Foreshore.Guide.Support;

/// <summary>Keeps what the site logged at Error and above, so that a page which fails quietly is seen.</summary>
public sealed class LogLines : ILoggerProvider
{
    private readonly ConcurrentQueue<string> errors = new();

    public IReadOnlyList<string> Errors => [.. errors];

    public ILogger CreateLogger(string categoryName) => new Category(categoryName, errors);

    public void Dispose() => errors.Clear();

    private sealed class Category(string name, ConcurrentQueue<string> errors) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Error;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (IsEnabled(logLevel))
                errors.Enqueue($"{name}: {formatter(state, exception)} {exception}");
        }
    }
}
