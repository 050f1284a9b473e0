using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// When the sun stands above −6 degrees at a place: light enough to walk as by day and to watch the sea. A walk is dark, all of
/// it, when any minute of it is, at the pace of the day; one that waits for the light may arrive before one that does not.
/// </summary>
internal sealed class WalkLight
{
    private const double CivilDegrees = -6;
    private const double EarlyWatchDegrees = -9;
    private const double NauticalDegrees = -12;
    private const double DayDegrees = 10;

    private readonly SunHalves halves;
    private readonly double from, to;

    internal WalkLight(Position position, SunEphemeris sun, double from, double to)
    {
        (this.from, this.to) = (from, to);
        halves = SunHalves.Over(sun.SeenFrom(position), from, to);
        Lit = Above(CivilDegrees);
    }

    /// <summary>From civil dawn to civil dusk, by days; one stretch where the sun stays up.</summary>
    internal IReadOnlyList<Stretch> Lit { get; }

    /// <summary>Light enough to watch the sea: as for walking, or sooner where a warden wrote that ledge and white water are seen by then.</summary>
    internal IReadOnlyList<Stretch> ToWatch(bool early) => early ? Above(EarlyWatchDegrees) : Lit;

    /// <summary>While the sun stands above −12 degrees: a dusk lasts until it ends, a dawn begins with it.</summary>
    internal IReadOnlyList<Stretch> WithTwilight() => Above(NauticalDegrees);

    /// <summary>While the sun stands above +10 degrees: where such a stretch ends, the dusk session begins.</summary>
    internal IReadOnlyList<Stretch> HighSun() => Above(DayDegrees);

    private List<Stretch> Above(double degrees) => halves.Within(degrees, -90, 90, from, to);

    /// <summary>The earliest end of a walk, days, that starts at an opening or later, after a ride. Never earlier for a later opening or a longer walk.</summary>
    internal double ArrivalAfter(double opening, double rideMinutes, Walk walk, Party party)
    {
        var (day, dark) = Paces(walk, party, 1);
        var start = opening + rideMinutes * Stretch.Minute;
        if (Lit.Hold(start, start + day)) return start + day;
        var next = Lit.FirstStartingAfter(start);
        return next is { } dawn && dawn.End - dawn.Start >= day ? Math.Min(start + dark, dawn.Start + day) : start + dark;
    }

    /// <summary>
    /// Until when one may set out, days, so that the walk and a ride after it end by a closing, whenever before that one sets
    /// out. Never later for an earlier closing or a longer walk.
    /// </summary>
    internal double LeaveBefore(double closing, double rideMinutes, Walk walk, Party party, double least = 1)
    {
        var (day, dark) = Paces(walk, party, least);
        var end = closing - rideMinutes * Stretch.Minute;
        // Whoever sets out later than this in the dark is late; in the light there is time until the walk would run into the dusk.
        var start = end - dark;
        return Lit.LastStartingBy(start) is { } lit && lit.End >= start + day ? Math.Min(end, lit.End) - day : start;
    }

    /// <summary>The latest start, days, of a walk that has arrived by a time: in the dark, or earlier by the last light where that is later.</summary>
    internal double StartToArriveBy(double arrival, Walk walk, Party party)
    {
        var (day, dark) = Paces(walk, party, 1);
        return Lit.LastStartingBy(arrival - day) is { } lit && lit.End - day >= lit.Start
            ? Math.Max(Math.Min(arrival, lit.End) - day, arrival - dark)
            : arrival - dark;
    }

    /// <summary>When a walk ends, days, that sets out at a time.</summary>
    internal double ArrivalFrom(double start, Walk walk, Party party)
    {
        var (day, dark) = Paces(walk, party, 1);
        return start + (Lit.Hold(start, start + day) ? day : dark);
    }

    private static (double Day, double Dark) Paces(Walk walk, Party party, double least) =>
        (walk.Minutes * Math.Max(least, party.Factor(isDark: false, walk.Ground)) * Stretch.Minute, walk.Minutes * Math.Max(least, party.Factor(isDark: true, walk.Ground)) * Stretch.Minute);
}
