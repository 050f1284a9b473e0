using NodaTime.TimeZones;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// The tables of time zones that clocks go by: the IANA's, as the NodaTime package carries them. Zones change at some weeks' notice, so
/// a site that has not been updated for long gives times of day that are an hour off.
/// </summary>
internal static partial class ZoneTables
{
    private const string Folder = "/usr/share/zoneinfo";
    private const string Beginning = "# version ";

    /// <summary>The edition that travels with the site, like 2026f.</summary>
    public static string Bundled => TzdbDateTimeZoneSource.Default.TzdbVersion;

    /// <summary>The edition of the machine's own tables; null where it has none that says.</summary>
    public static string? OfMachine(string folder = Folder)
    {
        try
        {
            var first = File.ReadLines(Path.Combine(folder, "tzdata.zi")).FirstOrDefault();
            return first?.StartsWith(Beginning, StringComparison.Ordinal) == true ? first[Beginning.Length..].Trim() : null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Tells the operator when the machine knows newer tables than the site.</summary>
    public static void WarnIfOlder(ILogger log, string folder = Folder)
    {
        if (OfMachine(folder) is { } machine && IsOlder(Bundled, machine)) Older(log, Bundled, machine);
    }

    /// <summary>Whether one edition came before another: a year, then a letter.</summary>
    public static bool IsOlder(string edition, string other) => string.CompareOrdinal(edition, other) < 0;

    [LoggerMessage(Level = LogLevel.Warning, Message = "The site's time zones are of {Bundled}, this machine's of {Machine}. Where a zone has changed since, times of day are wrong: update Foreshore.")]
    private static partial void Older(ILogger log, string bundled, string machine);
}
