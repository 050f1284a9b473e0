using System.Globalization;
using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>Hours of one month that print alike: from the hour, so many hours, density 1…6, and words for it.</summary>
public sealed record SeasonRun(int Row, int FromHour, int Hours, int Density, string Words);

/// <summary>A month's line of the margin.</summary>
public sealed record SeasonLine(string Name, string LongName, string Minutes, string MinutesUnrestricted, string Hours, string? Rank);

/// <summary>The season table as ink: six densities, none for a share of nought.</summary>
/// <param name="Marks">Rows and hours in which light and tide hold together on half of the month's days; none where tide is not in it.</param>
public sealed record SeasonDrawing(IReadOnlyList<SeasonRun> Runs, IReadOnlyList<SeasonLine> Lines, IReadOnlyList<(int Row, int Hour)> Marks)
{
    public const int Densities = 6;

    private static readonly string[] Ranks = ["I", "II", "III"];

    public static SeasonDrawing Of(SeasonTable table) => new(
        [.. table.Months.SelectMany((month, row) => RunsOf(month, row))],
        [.. table.Months.Select((month, row) => Line(month, table.Ranked[row], [.. Enumerable.Range(0, 24).Where(hour => table.Use?.IsMarked(row, hour) == true)]))],
        table.Use is not { } use ? [] : [.. Enumerable.Range(0, 12).SelectMany(row => Enumerable.Range(0, 24).Where(hour => use.IsMarked(row, hour)).Select(hour => (row, hour)))]);

    /// <summary>The density a share of days prints with: each of the six holds a sixth, and a single day is seen.</summary>
    public static int Density(double share) => share <= 0 ? 0 : Math.Clamp((int)Math.Ceiling(share * Densities - 1e-9), 1, Densities);

    /// <summary>A share in whole hundredths; less than one is said, never rounded to nothing.</summary>
    public static string Share(double share) => share is > 0 and < 0.005
        ? "under 1 %"
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Round(share * 100):0} %");

    private static IEnumerable<SeasonRun> RunsOf(SeasonMonth month, int row)
    {
        var shares = month.ShareByHour;
        for (var hour = 0; hour < shares.Count;)
        {
            var end = hour + 1;
            var density = Density(shares[hour]);
            while (end < shares.Count && Density(shares[end]) == density) end++;
            if (density > 0) yield return new(row, hour, end - hour, density, Words(month, hour, end));
            hour = end;
        }
    }

    private static string Words(SeasonMonth month, int from, int to)
    {
        var shares = month.ShareByHour.Skip(from).Take(to - from).ToList();
        var (least, most) = (Share(shares.Min()), Share(shares.Max()));
        return string.Create(CultureInfo.InvariantCulture,
            $"{Name(month.Month)} {from:00}–{to:00} h: {(least == most ? most : least.Replace(" %", "", StringComparison.Ordinal) + "–" + most)} of days");
    }

    private static SeasonLine Line(SeasonMonth month, SeasonMonth ranked, IReadOnlyList<int> marked) => new(
        Name(month.Month),
        month.Month.ToString("MMMM yyyy", CultureInfo.InvariantCulture),
        Minutes(ranked.MeanMinutesWithinHours),
        Minutes(ranked.MeanMinutesUnrestricted),
        string.Join(", ", month.ShareByHour.Select((share, hour) => (share, hour)).Where(h => h.share > 0)
            .Select(h => string.Create(CultureInfo.InvariantCulture, $"{h.hour:00} h {Share(h.share)}"))) is { Length: > 0 } hours ? hours + Marked(marked) : "none",
        ranked.Rank is >= 1 and <= 3 ? Ranks[ranked.Rank.Value - 1] : null);

    private static string Marked(IReadOnlyList<int> hours) => hours.Count == 0 ? ""
        : $"; with the tide on half of the days: {string.Join(", ", hours.Select(hour => hour.ToString("00", CultureInfo.InvariantCulture)))} h";

    private static string Minutes(double minutes) => minutes is > 0 and < 0.5
        ? "under 1 min"
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Round(minutes)} min");

    private static string Name(YearMonth month) => month.ToString("MMM", CultureInfo.InvariantCulture);
}
