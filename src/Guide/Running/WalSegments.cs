using System.Globalization;
using Foreshore.Guide.Hosting;

namespace Foreshore.Guide.Running;

/// <summary>
/// The files of the server's log from one to another, by their names of 24 hexadecimal digits: timeline, log, segment (PostgreSQL's
/// manual, "Continuous Archiving").
/// </summary>
internal static class WalSegments
{
    private const int NameLength = 24;
    private const long LogBytes = 1L << 32;

    public static IReadOnlyList<string> Between(string first, string last, long segmentBytes)
    {
        var aLog = LogBytes / segmentBytes;
        if (first.Length != NameLength || last.Length != NameLength || first[..8] != last[..8])
            throw new OperatorException($"The server's log changed its line during the backup ({first} to {last}).", "Begin the backup anew.");
        return [.. Enumerable.Range(0, (int)(Number(last) - Number(first)) + 1).Select(step => Name(Number(first) + step))];

        long Number(string name) => long.Parse(name[8..16], NumberStyles.HexNumber, CultureInfo.InvariantCulture) * aLog
            + long.Parse(name[16..], NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        string Name(long number) => string.Create(CultureInfo.InvariantCulture, $"{first[..8]}{number / aLog:X8}{number % aLog:X8}");
    }
}
