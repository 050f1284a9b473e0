using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Shell;

/// <summary>Times as the site prints them: by the place's own clock, 24 h, with the zone's abbreviation of that moment.</summary>
public static class SiteTimes
{
    private static readonly ZonedDateTimePattern Hours = ZonedDateTimePattern.CreateWithInvariantCulture("HH:mm", null);
    private static readonly ZonedDateTimePattern DayAndHours = ZonedDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm", null);
    private static readonly ZonedDateTimePattern Iso = ZonedDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:sso<m>", null);

    /// <summary>For example <c>05:42</c>; the zone stands once beside a group of such times.</summary>
    public static string Clock(this Instant at, DateTimeZone zone) => Hours.Format(at.InZone(zone));

    /// <summary>For example <c>Sat 28 Nov 05:42</c>.</summary>
    public static string DayAndClock(this Instant at, DateTimeZone zone) => DayAndHours.Format(at.InZone(zone));

    /// <summary>For machines: <c>2026-11-28T05:42:10-05:00</c>.</summary>
    public static string Machine(this Instant at, DateTimeZone zone) => Iso.Format(at.InZone(zone));

    /// <summary>For example <c>EST</c>; a zone that has only figures for a name reads <c>UTC+12:45</c>.</summary>
    public static string Abbreviation(this DateTimeZone zone, Instant at)
    {
        var interval = zone.GetZoneInterval(at);
        return interval.Name is ['+' or '-', ..] ? $"UTC{OffsetPattern.CreateWithInvariantCulture("+HH:mm").Format(interval.WallOffset)}" : interval.Name;
    }
}
