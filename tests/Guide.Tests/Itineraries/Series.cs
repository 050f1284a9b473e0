using NodaTime;

namespace Foreshore.Guide.Itineraries;

/// <summary>Tide and sun of one place by the minute. Nothing but these two figures is taken from the almanac.</summary>
internal sealed class Series
{
    private IReadOnlyList<Span>? day;

    public Series(Instant zero, int count, Func<Instant, double>? tide, Func<Instant, double> sun, DateTimeZone zone)
    {
        (Zero, Count, Zone) = (zero, count, zone);
        Sun = [.. Enumerable.Range(0, count).Select(minute => sun(At(minute)))];
        Tide = tide is null ? null : [.. Enumerable.Range(0, count).Select(minute => tide(At(minute)))];
        Dark = Within(Sun, value => value + 6 < 0, -6);
    }

    public Instant Zero { get; }

    public int Count { get; }

    public DateTimeZone Zone { get; }

    public double[] Sun { get; }

    public double[]? Tide { get; }

    /// <summary>The sun stands below −6.</summary>
    public IReadOnlyList<Span> Dark { get; }

    public Instant At(double minute) => Zero + Duration.FromMinutes(minute);

    public double MinuteOf(Instant time) => (time - Zero).TotalMinutes;

    public double MinuteOf(LocalDate date, double minutes) =>
        MinuteOf((date.AtMidnight() + Period.FromSeconds((long)Math.Round(minutes * 60))).InZoneLeniently(Zone).ToInstant());

    public LocalDate DateAt(double minute) => At(minute).InZone(Zone).Date;

    public IEnumerable<LocalDate> Dates(int around)
    {
        for (var date = DateAt(0).PlusDays(-around); date <= DateAt(Count).PlusDays(around); date = date.PlusDays(1))
            yield return date;
    }

    public IReadOnlyList<Span> TideBelow(double metres) => Within(Tide!, value => value < metres, metres);

    public IReadOnlyList<Span> SunAbove(double degrees) => Within(Sun, value => value >= degrees, degrees);

    /// <summary>Whether any part of a stretch is dark.</summary>
    public bool IsDark(double from, double to)
    {
        int low = 0, high = Dark.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Dark[middle].To <= from) low = middle + 1; else high = middle;
        }

        return low < Dark.Count && Dark[low].From < to;
    }

    /// <summary>When the sun rises or sets by the printed tables on a local date: its centre passes −50′.</summary>
    public double? Passing(LocalDate date, bool up)
    {
        double from = MinuteOf(date, 0), to = MinuteOf(date.PlusDays(1), 0);
        foreach (var span in day ??= SunAbove(-50.0 / 60))
        {
            var at = up ? span.From : span.To;
            if (at >= from && at < to && at > 0 && at < Count - 1) return at;
        }

        return null;
    }

    private static List<Span> Within(double[] values, Func<double, bool> holds, double level)
    {
        var found = new List<Span>();
        double? since = holds(values[0]) ? double.NegativeInfinity : null;
        for (var i = 1; i < values.Length; i++)
        {
            var (before, now) = (holds(values[i - 1]), holds(values[i]));
            if (before == now) continue;
            var at = i - 1 + (level - values[i - 1]) / (values[i] - values[i - 1]);
            if (now) since = at;
            else
            {
                found.Add(new(since!.Value, at));
                since = null;
            }
        }

        if (since is { } open) found.Add(new(open, double.PositiveInfinity));
        return found;
    }
}
