using System.Globalization;
using Foreshore.Almanac.Tides;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Tides;

/// <summary>High and low waters as a club brings them: time, height in metres, and which it is where the table says so.</summary>
internal static class TurnTable
{
    /// <summary>The head the table must have.</summary>
    public const string Head = "time, height";

    private static readonly string[][] Columns = [["time", "date", "datetime"], ["height", "height_m", "height (m)", "metres"], ["kind", "type"]];
    private static readonly LocalDateTimePattern[] Clocks =
        [LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm"), LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm"), LocalDateTimePattern.GeneralIso];
    private static readonly OffsetDateTimePattern[] WithOffset =
        [OffsetDateTimePattern.ExtendedIso, OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mmo<G>"), OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mmo<G>")];

    /// <param name="text">The table.</param>
    /// <param name="zone">Of times that have no offset of their own.</param>
    /// <returns>Waters in order of time; meaningful only where there is no fault.</returns>
    public static (IReadOnlyList<TideExtreme> Waters, IReadOnlyList<string> Faults) Read(string text, DateTimeZone zone)
    {
        var table = StationTable.Read(text, Columns, optional: 1, mostRows: 8000);
        var rows = table.Rows.Select(row => (row.Line, Time: TimeOf(table, row, zone), Metres: HeightOf(table, row), Kind: KindOf(table, row))).ToList();
        if (table.Faults.Count > 0)
            return ([], table.Faults);
        if (rows.Count < 2)
            table.Fault(null, "A table needs at least a high and a low water: between them lies the tide. Give two rows or more.");

        foreach (var row in rows.Where(row => row.Time.InUtc().Year is < TideRequest.FirstYear or > TideRequest.LastYear))
            table.Fault(row.Line, $"The year {row.Time.InUtc().Year.ToString(CultureInfo.InvariantCulture)} lies outside those the guide reckons tides for, {TideRequest.FirstYear} to {TideRequest.LastYear}. Look whether day and year are changed over.");

        var waters = new List<TideExtreme>();
        for (var i = 0; i < rows.Count; i++)
        {
            var (line, time, metres, kind) = rows[i];
            var beside = i > 0 ? rows[i - 1] : rows.Count > 1 ? rows[1] : rows[0];
            var isHigh = metres > beside.Metres;
            waters.Add(new(time, metres, isHigh));
            if (i == 0) continue;
            if (time <= beside.Time)
                table.Fault(line, time == beside.Time ? $"It has the time of line {beside.Line}. Keep one of the two."
                    : $"It is earlier than line {beside.Line}. Put the rows in order of time.");
            else if (time - beside.Time > Duration.FromHours(36))
                table.Fault(line, $"More than 36 hours lie between it and line {beside.Line}: waters are missing. Add them, or bring the parts as stations of their own.");
            else if (metres == beside.Metres)
                table.Fault(line, $"It stands as high as line {beside.Line}, so it is neither high nor low water. Look at both figures.");
            else if (isHigh == waters[i - 1].IsHigh)
                table.Fault(line, $"The water {(isHigh ? "rises" : "falls")} to it after {(isHigh ? "rising" : "falling")} to line {beside.Line}: the {(isHigh ? "low" : "high")} water between them is missing. Add it, or take one of the two out.");
            if (kind is { } said && said != isHigh)
                table.Fault(line, $"It says {(said ? "high" : "low")} water, but stands {(isHigh ? "higher" : "lower")} than line {beside.Line}. Look whether two rows or two columns are changed over.");
        }
        return (waters, table.Faults);
    }

    private static Instant TimeOf(StationTable table, StationRow row, DateTimeZone zone)
    {
        var typed = row.Fields[0];
        foreach (var pattern in WithOffset)
        {
            if (pattern.Parse(typed) is { Success: true, Value: var moment })
                return moment.ToInstant();
        }
        foreach (var pattern in Clocks)
        {
            if (pattern.Parse(typed) is not { Success: true, Value: var local }) continue;
            var mapped = zone.MapLocal(local);
            if (mapped.Count == 1)
                return mapped.Single().ToInstant();
            table.Fault(row.Line, mapped.Count == 0 ? $"{typed} does not exist in {zone.Id}: the clocks go forward over it. Look whether the table is in another zone, or write the offset behind the time."
                : $"{typed} comes twice in {zone.Id}, for the clocks go back. Write the offset behind it, like {typed}{mapped.First().Offset}.");
            return default;
        }
        table.Fault(row.Line, typed.Length == 0 ? "The time is missing. Write it like 2026-11-25 05:12."
            : $"\"{StationTable.Short(typed)}\" is no time. Write it like 2026-11-25 05:12, or with its offset like 2026-11-25T05:12-05:00.");
        return default;
    }

    private static double HeightOf(StationTable table, StationRow row)
    {
        var metres = table.Number(row, 1, "The height", "metres above chart datum");
        if (metres is < -5 or > 25)
            table.Fault(row.Line, FormattableString.Invariant($"A height of {metres} m lies outside what tides do. Metres above chart datum are meant, not feet or centimetres."));
        return metres;
    }

    /// <summary>Null where the table does not say.</summary>
    private static bool? KindOf(StationTable table, StationRow row)
    {
        switch (row.Fields[2].ToUpperInvariant())
        {
            case "": return null;
            case "H" or "HW" or "HIGH": return true;
            case "L" or "LW" or "LOW": return false;
            default:
                table.Fault(row.Line, $"\"{StationTable.Short(row.Fields[2])}\" is neither high nor low water. Write H or L, or leave the column out.");
                return null;
        }
    }
}
