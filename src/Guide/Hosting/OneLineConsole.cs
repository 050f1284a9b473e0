using System.Globalization;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;
using NodaTime;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// One record, one line. Messages and faults carry what strangers typed; a line break in it would let them write a record of their own, and
/// an escape sequence would let them rewrite a terminal. A fault's own lines follow behind a bar.
/// </summary>
internal sealed class OneLineConsole(IClock clock) : ConsoleFormatter(Format)
{
    public const string Format = "one-line";

    public override void Write<TState>(in LogEntry<TState> entry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        var time = clock.GetCurrentInstant().ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        textWriter.Write($"{time} {entry.LogLevel.ToString().ToLowerInvariant()} {entry.Category}: {Plain(entry.Formatter(entry.State, entry.Exception))}\n");
        foreach (var line in entry.Exception?.ToString().Split('\n') ?? [])
            textWriter.Write($"    | {Plain(line.TrimEnd('\r'))}\n");
    }

    /// <summary>Controls and line separators as their numbers, so that nothing is lost either.</summary>
    internal static string Plain(string text)
    {
        if (!text.Any(IsUnsafe))
            return text;
        var plain = new StringBuilder(text.Length + 16);
        foreach (var letter in text)
            plain.Append(IsUnsafe(letter) ? $"\\u{(int)letter:x4}" : letter.ToString());
        return plain.ToString();
    }

    private static bool IsUnsafe(char letter) => char.IsControl(letter) || letter is '\u2028' or '\u2029';
}
