using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>
/// Twelve whole months of a place's clock, into which stretches of time are counted: any stretches, so that what tide and
/// access leave of the light is counted by the same rules.
/// </summary>
internal sealed class SeasonGrid
{
    internal const int MonthCount = 12;
    private const double SecondsPerDay = 86400;
    private const double SecondsPerHour = 3600;
    private const double CountingSeconds = 300;
    // Times are kept to microseconds; a tie is a tie within a millisecond.
    private const double Tie = 0.001;

    private readonly double epoch;
    private readonly (double Start, double End, double OffsetSeconds)[] clock;
    private readonly int[] monthOfDay;
    // Seconds of one stretch in each clock hour: emptied after each stretch.
    private readonly double[] secondsInHour;

    internal SeasonGrid(YearMonth first, DateTimeZone zone)
    {
        Months = [.. Enumerable.Range(0, MonthCount).Select(first.PlusMonths)];
        var (start, end) = (first.OnDayOfMonth(1), first.PlusMonths(MonthCount).OnDayOfMonth(1));
        From = JulianDay.DaysFromJ2000(zone.AtStartOfDay(start).ToInstant());
        To = JulianDay.DaysFromJ2000(zone.AtStartOfDay(end).ToInstant());

        epoch = JulianDay.DaysFromJ2000(start.AtMidnight().InUtc().ToInstant());
        clock =
        [
            .. zone.GetZoneIntervals(JulianDay.FromDays(From - 1), JulianDay.FromDays(To + 1)).Select(part => (
                part.HasStart ? JulianDay.DaysFromJ2000(part.Start) : double.NegativeInfinity,
                part.HasEnd ? JulianDay.DaysFromJ2000(part.End) : double.PositiveInfinity,
                (double)part.WallOffset.Seconds)),
        ];
        monthOfDay = [.. Months.SelectMany((month, index) => Enumerable.Repeat(index, DaysOf(month)))];
        secondsInHour = new double[monthOfDay.Length * 24];
    }

    internal IReadOnlyList<YearMonth> Months { get; }

    /// <summary>Beginning of the first month, days from J2000.</summary>
    internal double From { get; }

    /// <summary>End of the last month, days from J2000.</summary>
    internal double To { get; }

    internal int HourCells => secondsInHour.Length;

    /// <summary>
    /// Marks the hours of the days that count: those in which a stretch has five minutes or its greater part. An hour that
    /// the clock repeats is one hour; one that it leaves out is never marked.
    /// </summary>
    internal void Mark(IReadOnlyList<Stretch> stretches, bool[] marked)
    {
        foreach (var stretch in stretches)
        {
            var needed = Math.Min(CountingSeconds - Tie, (stretch.End - stretch.Start) * SecondsPerDay / 2 + Tie);
            var (lowest, highest) = (int.MaxValue, -1);
            foreach (var (start, end) in OnClock(stretch))
            {
                for (var cell = (int)Math.Floor(start / SecondsPerHour); cell * SecondsPerHour < end; cell++)
                {
                    if (cell < 0 || cell >= secondsInHour.Length) continue;
                    secondsInHour[cell] += Math.Min(end, (cell + 1) * SecondsPerHour) - Math.Max(start, cell * SecondsPerHour);
                    (lowest, highest) = (Math.Min(lowest, cell), Math.Max(highest, cell));
                }
            }

            for (var cell = lowest; cell <= highest; cell++)
            {
                if (secondsInHour[cell] >= needed) marked[cell] = true;
                secondsInHour[cell] = 0;
            }
        }
    }

    /// <summary>Share of each month's days that are marked, by hour.</summary>
    internal double[][] Shares(bool[] marked)
    {
        var shares = new double[MonthCount][];
        for (var month = 0; month < MonthCount; month++)
            shares[month] = new double[24];
        for (var cell = 0; cell < marked.Length; cell++)
            if (marked[cell])
                shares[monthOfDay[cell / 24]][cell % 24]++;
        for (var month = 0; month < MonthCount; month++)
            for (var hour = 0; hour < 24; hour++)
                shares[month][hour] /= DaysOf(Months[month]);
        return shares;
    }

    /// <summary>Minutes a day within some hours, mean over each month. The stretches must not overlap.</summary>
    internal double[] MeanMinutes(IReadOnlyList<Stretch> stretches, HoursOut hours)
    {
        var minutes = new double[MonthCount];
        foreach (var stretch in stretches)
        {
            foreach (var (start, end) in OnClock(stretch))
            {
                for (var day = (int)Math.Floor(start / SecondsPerDay); day * SecondsPerDay < end; day++)
                {
                    if (day < 0 || day >= monthOfDay.Length) continue;
                    var midnight = day * SecondsPerDay;
                    minutes[monthOfDay[day]] += hours.SecondsWithin(Math.Max(0, start - midnight), Math.Min(SecondsPerDay, end - midnight)) / 60;
                }
            }
        }

        for (var month = 0; month < MonthCount; month++)
            minutes[month] /= DaysOf(Months[month]);
        return minutes;
    }

    /// <summary>A stretch by the clock: seconds from midnight of the first day, in one piece for each offset that held.</summary>
    private IEnumerable<(double Start, double End)> OnClock(Stretch stretch)
    {
        foreach (var part in clock)
        {
            var (start, end) = (Math.Max(stretch.Start, part.Start), Math.Min(stretch.End, part.End));
            if (end > start)
                yield return ((start - epoch) * SecondsPerDay + part.OffsetSeconds, (end - epoch) * SecondsPerDay + part.OffsetSeconds);
        }
    }

    private static int DaysOf(YearMonth month) => month.OnDayOfMonth(1).Calendar.GetDaysInMonth(month.Year, month.Month);
}
