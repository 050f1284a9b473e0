using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using NodaTime.Testing;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>What strangers type into a message or a fault writes no record of its own (OWASP ASVS 5.0, 16.4.1).</summary>
public sealed class OneLineConsoleTests
{
    private const string Forged = "x\r\n2026-11-25T12:00:00Z information Guide: Ana became an admin";

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n")]
    [InlineData("\r")]
    [InlineData("\u0085")]
    [InlineData("\u2028")]
    [InlineData("\u2029")]
    [InlineData("\u001b[2K")]
    public void A_message_stays_one_line(string within)
    {
        var written = Written($"no page at /{within}forged", null);

        Assert.Equal(1, written.Count(letter => letter == '\n'));
        Assert.EndsWith("\n", written, StringComparison.Ordinal);
        Assert.DoesNotContain(written.TrimEnd('\n'), char.IsControl);
        Assert.Contains($"\\u{(int)within[0]:x4}", written, StringComparison.Ordinal);
        Assert.StartsWith("2026-11-25T12:00:00Z warning Guide.Tests: no page at /", written, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_s_lines_stand_behind_a_bar()
    {
        var lines = Written(Forged, new NotAcceptedException(Forged)).Split('\n', StringSplitOptions.RemoveEmptyEntries);

        Assert.StartsWith("2026-11-25T12:00:00Z warning Guide.Tests: x", lines[0], StringComparison.Ordinal);
        Assert.True(lines.Length > 2);
        Assert.All(lines.Skip(1), line => Assert.StartsWith("    | ", line, StringComparison.Ordinal));
    }

    [Fact]
    public void Words_of_an_act_stay_one_line() =>
        Assert.Equal("a b c d", new AuditEntry(Act.Closed, Instant.MinValue, null, null, "a\nb\u2028c\rd").Words);

    private static string Written(string message, Exception? fault)
    {
        using var text = new StringWriter();
        var entry = new LogEntry<string>(LogLevel.Warning, "Guide.Tests", default, message, fault, (state, _) => state);
        new OneLineConsole(new FakeClock(Instant.FromUtc(2026, 11, 25, 12, 0))).Write(entry, null, text);
        return text.ToString();
    }
}
