using Foreshore.Almanac.Stays;
using NodaTime;

namespace Foreshore.Guide.Itineraries;

/// <summary>Holds the stays that the site gives for one way against the independent ones.</summary>
internal static class Held
{
    private static readonly double Ten = 10.0 / 60;

    /// <summary>Every minute that the site allows must be allowed, and each stay must be told to within five minutes of its end.</summary>
    /// <param name="from">First minute looked at.</param>
    /// <param name="to">Last.</param>
    public static IEnumerable<string> Against(string name, FlatStance stance, FlatWay way, OwnGates gates, Pace pace, IReadOnlyList<Stay> site, int from, int to)
    {
        var series = pace.Series;
        var mine = OwnStay.Of(stance, way, gates, pace, Ten);
        foreach (var stay in site)
        {
            var first = Math.Max(from, Math.Ceiling(stay.From is { } begins ? series.MinuteOf(begins) : from));
            var last = Math.Min(to, Math.Floor(stay.TurnBack is { } back ? series.MinuteOf(back) : to));
            var wrong = Enumerable.Range((int)first, Math.Max(0, (int)(last - first) + 1))
                .Where(minute => !mine.Here[minute] && !gates.Unknown.Any(span => minute >= span.From && minute <= span.To)).ToList();
            if (wrong.Count == 0) continue;
            yield return $"{name}: {(wrong[^1] == (int)last ? "stays too late" : wrong[0] == (int)first ? "begins too early" : "does not leave between")}: {wrong.Count} min from {Clock(series, wrong[0])}, "
                + $"forbidden by {mine.EndedBy[wrong[^1]] ?? "watching or set-up"}; the site's stay is {Text(series, stay.From)} to {Text(series, stay.TurnBack)}, closed by {stay.Closing} {stay.ClosesBy} at {Text(series, stay.ClosesAt)}, "
                + $"opened by {stay.Opening} {stay.OpensBy} at {Text(series, stay.OpensAt)}";
        }

        var plain = OwnStay.Of(stance, way, OwnGates.Of(stance, way, pace, plainly: true), pace, -Ten, lowestWatch: true);
        foreach (var (first, last) in plain.Runs().Where(run => run.First >= from && run.Last <= to))
        {
            var end = last - (int)((series.Zero.ToUnixTimeSeconds() / 60 + last) % 5);
            if (end - first < 20 || gates.Unknown.Any(span => first <= span.To && last >= span.From)) continue;
            var told = site.Where(stay => (stay.From is null || series.MinuteOf(stay.From.Value) <= end) && (stay.TurnBack is null || series.MinuteOf(stay.TurnBack.Value) >= first)).ToList();
            if (told.Count == 0)
            {
                yield return $"{name}: no stay of the site from {Clock(series, first)} to {Clock(series, end)} ({plain.EndedBy[Math.Min(last + 1, series.Count - 1)]})";
                continue;
            }

            // Before dawn the site takes the walk out as dark throughout, though who leaves at dawn is quicker.
            var allowed = Enumerable.Range(Math.Max(0, last - 60), 120).Any(minute => series.Sun[minute] < -6 && series.Sun[minute + 1] >= -6) ? 15 : 5;
            if (told[^1].TurnBack is { } back && series.MinuteOf(back) < end - allowed)
            {
                yield return $"{name}: the site turns back {Text(series, back)}, {end - series.MinuteOf(back):0} min before {Clock(series, end)} "
                    + $"({plain.EndedBy[Math.Min(last + 1, series.Count - 1)]}), closed by {told[^1].Closing} {told[^1].ClosesBy} at {Text(series, told[^1].ClosesAt)}";
            }
        }
    }

    private static string Clock(Series series, double minute) => Text(series, series.At(minute));

    private static string Text(Series series, Instant? time) => time is { } at ? at.InZone(series.Zone).ToString("uuuu-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture) : "open";
}
