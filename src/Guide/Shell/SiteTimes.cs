using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Shell;

/// <summary>Times as the site prints them: by the place's own clock, 24 h, with the zone's abbreviation of that moment.</summary>
public static class SiteTimes
{
    private static readonly ZonedDateTimePattern Hours = ZonedDateTimePattern.CreateWithInvariantCulture("HH:mm", null);
    private static readonly ZonedDateTimePattern DayAndHours = ZonedDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm", null);
    private static readonly ZonedDateTimePattern DayMonthAndHours = ZonedDateTimePattern.CreateWithInvariantCulture("d MMM HH:mm", null);
    private static readonly ZonedDateTimePattern Iso = ZonedDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:sso<m>", null);

    /// <summary>For example <c>05:42</c>; the zone stands once beside a group of such times.</summary>
    public static string Clock(this Instant at, DateTimeZone zone) => Hours.Format(at.InZone(zone));

    /// <summary>For example <c>Sat 28 Nov 05:42</c>.</summary>
    public static string DayAndClock(this Instant at, DateTimeZone zone) => DayAndHours.Format(at.InZone(zone));

    /// <summary>For machines: <c>2026-11-28T05:42:10-05:00</c>.</summary>
    public static string Machine(this Instant at, DateTimeZone zone) => Iso.Format(at.InZone(zone));

    /// <summary>
    /// The zone of a stretch of time: <c>EST</c>, or <c>EDT, from 1 Nov 01:00 EST</c> where the clocks change within it; the
    /// moment is told by the new clock. A change at the very end, from which on nothing is told, is none.
    /// </summary>
    public static string Abbreviations(this DateTimeZone zone, Instant from, Instant to)
    {
        var words = zone.Abbreviation(from);
        foreach (var change in zone.GetZoneIntervals(from, to).Skip(1).Select(part => part.Start))
            if (zone.Abbreviation(change) != zone.Abbreviation(change - Duration.Epsilon))
                words += $", from {DayMonthAndHours.Format(change.InZone(zone))} {zone.Abbreviation(change)}";
        return words;
    }

    /// <summary>For example <c>EST</c>; a zone that has only figures for a name reads <c>UTC+12:45</c>.</summary>
    public static string Abbreviation(this DateTimeZone zone, Instant at)
    {
        var interval = zone.GetZoneInterval(at);
        return interval.Name is ['+' or '-', ..] ? $"UTC{OffsetPattern.CreateWithInvariantCulture("+HH:mm").Format(interval.WallOffset)}" : interval.Name;
    }
}
